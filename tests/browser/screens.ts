/** Every screen of the product by its address, with the heading it opens with in the sample bar. */
export const SCREENS = [
  ["/", "This week"],
  ["/count", "Count"],
  ["/sales", "Sales"],
  ["/variance", "Variance"],
  ["/variance/Quillmere%20Vodka", "Quillmere Vodka"],
  ["/report", "The owner’s report"],
  ["/order", "Order"],
  ["/forecast", "Forecast"],
  ["/plan", "What if"],
  ["/prep", "Prep"],
  ["/prep/Simple%20Syrup", "Simple Syrup"],
  ["/specs", "Specs"],
  ["/specs/Harbour%20Sour", "Harbour Sour"],
  ["/stock", "Stock"],
  ["/movements", "Deliveries"],
  ["/history", "History"],
] as const;

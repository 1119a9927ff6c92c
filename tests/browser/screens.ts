/** Every screen of the product by its address, with the heading it opens with in the sample bar. */
export const SCREENS = [
  ["/", "This week"],
  ["/count", "Count"],
  ["/sales", "Sales"],
  ["/variance", "Variance"],
  ["/variance/Quillmere%20Vodka", "Quillmere Vodka"],
  ["/order", "Order"],
  ["/prep", "Prep"],
  ["/specs", "Specs"],
  ["/stock", "Stock"],
  ["/movements", "Deliveries"],
] as const;

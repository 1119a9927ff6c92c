import type { SimDrink } from "../catalogue.ts";
import {
  CRUSHED,
  DOUBLE,
  drink,
  EXTRA_LIME,
  FIZZ,
  NO_ICE,
  NO_STRAW,
  ROCKS,
  SUB_SMOKED,
  TALL,
  WINE,
} from "./glassware.ts";

export const LONG_DRINKS: SimDrink[] = [
  drink(
    "Mint Halyard",
    13,
    "2 oz Oarlock White Rum; 1 oz Lime Juice; 0.75 oz Simple Syrup; 3 each Mint Sprig; top Fizzardy Soda Water; 1 each Paper Straw",
    {
      ...FIZZ,
      weight: 4,
      asks: [NO_STRAW, EXTRA_LIME],
      rings: [
        { name: "Mint Halyard", share: 0.8 },
        { name: "Halyard Pitcher", share: 0.04, serves: 4 },
        { name: "HH Halyard", share: 0.16 },
      ],
    },
  ),
  drink(
    "Wharf Mule",
    13,
    "2 oz Quillmere Vodka; 0.5 oz Lime Juice; 0.25 oz Ginger Syrup; top Fizzardy Ginger Beer; 1 each Lime Wedge; 1 each Paper Straw",
    { ...TALL, weight: 5.5, asks: [NO_STRAW, EXTRA_LIME, NO_ICE], rings: [{ name: "Mule", share: 1 }] },
  ),
  drink(
    "Lighterman Collins",
    13,
    "2 oz Wickerlamp Dry Gin; 0.75 oz Lemon Juice; 0.75 oz Simple Syrup; top Fizzardy Soda Water; 1 each Orange Wheel; 1 each Paper Straw",
    { ...FIZZ, weight: 3, asks: [NO_STRAW] },
  ),
  drink(
    "Strand Paloma",
    14,
    "2 oz Cinderpalm Blanco Agave; 1.5 oz Grapefruit Juice; 0.5 oz Lime Juice; 0.5 oz Grapefruit Cordial; 3 drop Saline; top Fizzardy Soda Water; 1 each Paper Straw",
    { ...TALL, weight: 3.8, asks: [SUB_SMOKED, NO_STRAW] },
  ),
  drink(
    "Squall",
    14,
    "2 oz Oarlock Aged Rum; 0.5 oz Lime Juice; top Fizzardy Ginger Beer; 1 each Lime Wedge; 1 each Paper Straw",
    { ...TALL, weight: 3, asks: [NO_STRAW, EXTRA_LIME] },
  ),
  drink(
    "Solvinella Spritz",
    12,
    "2 oz Solvinella Spritz Aperitif; 3 oz Bellancroft Sparkling Brut; top Fizzardy Soda Water; 1 each Orange Wheel",
    {
      ...WINE,
      weight: 5,
      rings: [
        { name: "Spritz", share: 0.8 },
        { name: "HH Spritz", share: 0.2 },
      ],
    },
  ),
  drink(
    "Elder Spritz",
    13,
    "1.5 oz Velderose Elderflower Liqueur; 3 oz Bellancroft Sparkling Brut; 0.25 oz Lemon Juice; top Fizzardy Soda Water; 2 each Mint Sprig",
    { ...WINE, weight: 3 },
  ),
  drink(
    "Bramble Sheet",
    14,
    "2 oz Wickerlamp Dry Gin; 0.75 oz Lemon Juice; 0.5 oz Simple Syrup; 0.5 oz Morvane Cherry Liqueur; 1 each Lemon Twist",
    { ...CRUSHED, weight: 1.6, onMenuUntilDay: 48 },
  ),
  drink(
    "Almond Reef",
    15,
    "1.5 oz Oarlock Aged Rum; 0.5 oz Marrowby Overproof Rum; 0.75 oz House Almond Syrup | Nutfieldry Almond Syrup; 0.5 oz Orrindel Orange Liqueur; 1 oz Lime Juice; 1 each Mint Sprig",
    { ...CRUSHED, weight: 3, allergens: "almonds", asks: [{ modifier: "Bought Almond", chance: 0.05 }] },
  ),
  drink(
    "Jetty Punch",
    14,
    "2 oz Oarlock White Rum; 1 oz Orange Juice; 0.5 oz Lime Juice; 0.5 oz Rich Demerara Syrup; 0.25 oz Nutfieldry Almond Syrup; 2 dash Tarwick Aromatic Bitters; 1 each Orange Wheel; 1 each Paper Straw",
    { ...CRUSHED, weight: 2.5, allergens: "almonds", asks: [NO_STRAW] },
  ),
  drink(
    "Frost Fair",
    15,
    "1.5 oz Thornquay Rye; 0.75 oz Ginger Syrup; 0.75 oz Lemon Juice; 0.25 oz Monkswick Herbal Liqueur; 2 dash Tarwick Orange Bitters",
    { ...ROCKS, weight: 3, onMenuFromDay: 49 },
  ),
  drink("Gin & Tonic", 11, "2 oz Wickerlamp Dry Gin; top Fizzardy Tonic Water; 1 each Lime Wedge", {
    ...TALL,
    weight: 4.5,
    asks: [DOUBLE, EXTRA_LIME, NO_ICE],
    rings: [{ name: "G&T", share: 1 }],
  }),
  drink("Vodka Soda", 10, "2 oz Quillmere Vodka; top Fizzardy Soda Water; 1 each Lime Wedge", {
    ...TALL,
    weight: 5.5,
    asks: [DOUBLE, EXTRA_LIME, NO_ICE],
    rings: [{ name: "VODKA SODA", share: 1 }],
  }),
  drink("Rum & Cola", 10, "2 oz Oarlock White Rum; top Fizzardy Cola; 1 each Lime Wedge", {
    ...TALL,
    weight: 2.4,
    asks: [DOUBLE, NO_ICE],
    rings: [{ name: "Rum Cola", share: 1 }],
  }),
  drink(
    "Still Harbour",
    8,
    "1.5 oz Grapefruit Cordial; 0.75 oz Lime Juice; top Fizzardy Soda Water; 2 each Mint Sprig; 2 each Cucumber Slice",
    { ...TALL, weight: 1.8, rings: [{ name: "NA Still Harbour", share: 1 }] },
  ),
  drink(
    "Ginger Anchor",
    8,
    "1 oz Ginger Syrup; 0.75 oz Lemon Juice; top Fizzardy Soda Water; 1 each Lemon Twist",
    { ...TALL, weight: 1.6, rings: [{ name: "NA Ginger Anchor", share: 1 }] },
  ),
];

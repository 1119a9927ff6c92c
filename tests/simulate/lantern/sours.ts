import { lines, type SimDrink } from "../catalogue.ts";
import { COUPE, drink, EXTRA_LIME, NO_EGG, NO_ICE, ROCKS, SPICY, SUB_RYE, SUB_SMOKED } from "./glassware.ts";

export const SOURS: SimDrink[] = [
  drink(
    "Harbour Sour",
    14,
    "2 oz Thornquay Bourbon; 0.75 oz Lemon Juice; 0.75 oz Simple Syrup; 0.75 oz Egg White; 2 dash Tarwick Aromatic Bitters",
    { ...COUPE, weight: 5, allergens: "egg", asks: [NO_EGG, SUB_RYE] },
  ),
  drink(
    "Lantern Daiquiri",
    13,
    "2 oz Oarlock White Rum; 1 oz Lime Juice; 0.75 oz Simple Syrup; 1 each Lime Wheel",
    {
      ...COUPE,
      weight: 4.5,
      rings: [
        { name: "Lantern Daiq", share: 0.7 },
        { name: "HH Daiquiri", share: 0.3 },
      ],
    },
  ),
  drink(
    "Tideline Margarita",
    14,
    [
      {
        fromDay: -90,
        lines: lines(
          "2 oz Cinderpalm Blanco Agave; 0.75 oz Orrindel Orange Liqueur; 1 oz Lime Juice; 0.25 oz Simple Syrup; 2 drop Saline; 1 each Lime Wheel",
        ),
      },
      {
        fromDay: 38,
        lines: lines(
          "1.75 oz Cinderpalm Blanco Agave; 0.75 oz Orrindel Orange Liqueur; 0.75 oz Lime Juice; 0.25 oz Simple Syrup; 2 drop Saline; 1 each Lime Wheel",
        ),
      },
    ],
    {
      ...ROCKS,
      weight: 7.5,
      rings: [
        { name: "Tideline Marg", share: 0.75 },
        { name: "HH Marg", share: 0.25 },
      ],
      asks: [SUB_SMOKED, SPICY, EXTRA_LIME, NO_ICE],
    },
  ),
  drink(
    "Ember Margarita",
    15,
    "2 oz Chilli Agave Infusion; 0.5 oz Orrindel Orange Liqueur; 1 oz Lime Juice; 0.5 oz Simple Syrup; 1 each Lime Wheel",
    { ...ROCKS, weight: 4, asks: [EXTRA_LIME] },
  ),
  drink(
    "Gimbal Gimlet",
    13,
    "2 oz Cucumber Gin; 0.75 oz Lime Juice; 0.75 oz Simple Syrup; 2 each Cucumber Slice",
    { ...COUPE, weight: 3 },
  ),
  drink(
    "Bee Ledger",
    14,
    "2 oz Wickerlamp Dry Gin; 0.75 oz Lemon Juice; 0.75 oz Honey Mix; 1 each Lemon Twist",
    { ...COUPE, weight: 3 },
  ),
  drink(
    "Orchard Sidecar",
    15,
    "1.5 oz Pomerack Apple Brandy; 0.75 oz Orrindel Orange Liqueur; 0.75 oz Lemon Juice; 0.25 oz Rich Demerara Syrup; 1 each Orange Twist",
    { ...COUPE, weight: 2 },
  ),
  drink(
    "Vellum Sidecar",
    15,
    "1.5 oz Vantellor Grape Brandy; 0.75 oz Orrindel Orange Liqueur; 0.75 oz Lemon Juice; 1 each Lemon Twist",
    { ...COUPE, weight: 1.8 },
  ),
  drink(
    "Gangway Sour",
    14,
    "2 oz Ferrowick Blended Whisky; 0.75 oz Lemon Juice; 0.75 oz Ginger Syrup; 0.25 oz Honey Mix; 1 barspoon Ashbarrow Peated Whisky",
    { ...ROCKS, weight: 2.6, rings: [{ name: "Gangway", share: 1 }] },
  ),
  drink(
    "Last Rope",
    15,
    "0.75 oz Wickerlamp Dry Gin; 0.75 oz Monkswick Herbal Liqueur; 0.75 oz Morvane Cherry Liqueur; 0.75 oz Lime Juice",
    { ...COUPE, weight: 2.4 },
  ),
  drink(
    "Peach Semaphore",
    13,
    "1.5 oz Quillmere Vodka; 0.75 oz Peachcroft Peach Liqueur; 0.75 oz Lemon Juice; 0.5 oz Simple Syrup; 0.75 oz Egg White",
    { ...COUPE, weight: 2, allergens: "egg", asks: [NO_EGG] },
  ),
  drink(
    "Grapefruit Buoy",
    13,
    "2 oz Quillmere Vodka; 1 oz Grapefruit Juice; 0.75 oz Grapefruit Cordial; 1 each Grapefruit Peel",
    { ...ROCKS, weight: 2.6 },
  ),
];

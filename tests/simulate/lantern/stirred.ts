import { lines, type SimDrink } from "../catalogue.ts";
import { COUPE, drink, LARGE, SUB_RYE, UP } from "./glassware.ts";

export const STIRRED: SimDrink[] = [
  drink("Lantern Martini", 15, "3 oz Bottled Lantern Martini; 1 each Lemon Twist", {
    ...UP,
    weight: 3.2,
    method: "Pour straight from the freezer.",
  }),
  drink(
    "Navigator Martini",
    17,
    "2.5 oz Saltglass Strong Gin; 0.5 oz Dunmarrow Dry Vermouth; 1 dash Tarwick Orange Bitters; 1 each Lemon Twist",
    { ...UP, weight: 1.8 },
  ),
  drink(
    "Mooring Old Fashioned",
    15,
    [
      {
        fromDay: -90,
        lines: lines(
          "2 oz Thornquay Bourbon | Thornquay Rye; 1 barspoon Rich Demerara Syrup; 2 dash Tarwick Aromatic Bitters; 1 each Orange Twist",
        ),
      },
      {
        fromDay: 63,
        lines: lines(
          "2 oz Thornquay Bourbon | Thornquay Rye; 1.5 barspoon Rich Demerara Syrup; 2 dash Tarwick Aromatic Bitters; 1 dash Tarwick Orange Bitters; 1 each Orange Twist",
        ),
      },
    ],
    {
      ...LARGE,
      weight: 5.5,
      asks: [SUB_RYE],
      rings: [
        { name: "Mooring OF", share: 0.8 },
        { name: "HH Old Fash", share: 0.2 },
      ],
    },
  ),
  drink(
    "Rye Wharfinger",
    15,
    "2 oz Thornquay Rye; 1 oz Dunmarrow Sweet Vermouth; 2 dash Tarwick Aromatic Bitters; 1 each Orange Twist",
    { ...UP, weight: 2.4 },
  ),
  drink(
    "Brasketto Negroni",
    14,
    "1 oz Wickerlamp Dry Gin; 1 oz Brasketto Bitter Aperitif; 1 oz Dunmarrow Sweet Vermouth; 1 each Orange Twist",
    { ...LARGE, weight: 4.2, rings: [{ name: "Negroni", share: 1 }] },
  ),
  drink(
    "Smoke Signal",
    15,
    "1 oz Cinderpalm Smoked Agave; 1 oz Brasketto Bitter Aperitif; 1 oz Dunmarrow Sweet Vermouth; 1 each Orange Twist",
    { ...LARGE, weight: 2.2 },
  ),
  drink(
    "Night Ferry",
    14,
    "1.5 oz Quillmere Vodka; 1 oz Kettlebrine Coffee Liqueur; 0.25 oz Simple Syrup; 2 drop Saline",
    {
      ...COUPE,
      weight: 4.2,
      rings: [{ name: "Nite Ferry", share: 1 }],
      asks: [{ modifier: "Birthday", chance: 0.02 }],
    },
  ),
];

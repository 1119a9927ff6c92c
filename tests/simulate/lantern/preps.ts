import { always, type SimCut, type SimPrep } from "../catalogue.ts";

export const CUTS: SimCut[] = [
  { source: "Lime", gives: "Lime Juice", perPiece: 28, unit: "ml", parts: ["flesh"] },
  { source: "Lime", gives: "Lime Wheel", perPiece: 7, unit: "each", parts: ["skin", "flesh"] },
  { source: "Lime", gives: "Lime Wedge", perPiece: 8, unit: "each", parts: ["skin", "flesh"] },
  { source: "Lemon", gives: "Lemon Juice", perPiece: 1.5, unit: "oz", parts: ["flesh"] },
  { source: "Lemon", gives: "Lemon Twist", perPiece: 8, unit: "each", parts: ["skin"] },
  { source: "Grapefruit", gives: "Grapefruit Juice", perPiece: 170, unit: "ml", parts: ["flesh"] },
  { source: "Grapefruit", gives: "Grapefruit Peel", perPiece: 10, unit: "each", parts: ["skin"] },
  { source: "Orange", gives: "Orange Juice", perPiece: 2.5, unit: "oz", parts: ["flesh"] },
  { source: "Orange", gives: "Orange Twist", perPiece: 9, unit: "each", parts: ["skin"] },
  { source: "Orange", gives: "Orange Wheel", perPiece: 8, unit: "each", parts: ["skin", "flesh"] },
  { source: "Cucumber", gives: "Cucumber Slice", perPiece: 24, unit: "each", parts: ["whole"] },
  { source: "Mint Bunch", gives: "Mint Sprig", perPiece: 14, unit: "each", parts: ["leaf"] },
  { source: "Egg", gives: "Egg White", perPiece: 1, unit: "oz", parts: ["white"] },
  // Autumn limes press drier.
  { source: "Lime", fromDay: 49, gives: "Lime Juice", perPiece: 26, unit: "ml", parts: ["flesh"] },
];

type Making = Omit<SimPrep, "versions" | "inSheet" | "name"> & { spec?: string };

function prep(name: string, { spec, ...rest }: Making): SimPrep {
  return { name, ...rest, versions: spec === undefined ? [] : always(spec), inSheet: true };
}

const PRESS = {
  stepMl: 100,
  vesselMaxMl: 4000,
  activeMinutes: 25,
  standingHours: 0,
  coverDays: 1,
  method: "Press, strain, date.",
};
const POT = { activeMinutes: 15, standingHours: 1, shelfLifeDays: 21, coverDays: 4 };

/** In the order they are made: what others are built on comes first. */
export const PREPS: SimPrep[] = [
  prep("Lime Juice", { yieldMl: 1000, shelfLifeDays: 2, ...PRESS }),
  prep("Lemon Juice", { yieldMl: 1000, shelfLifeDays: 2, ...PRESS }),
  { ...prep("Grapefruit Juice", { yieldMl: 1000, shelfLifeDays: 2, ...PRESS, stepMl: 50 }), inSheet: false },
  { ...prep("Orange Juice", { yieldMl: 1000, shelfLifeDays: 2, ...PRESS, stepMl: 50 }), inSheet: false },
  prep("Simple Syrup", {
    // 1 : 1 by weight is 50 °Bx; 1 kg water and 1 kg sugar are 1626 ml (from the sucrose density tables).
    spec: "1000 g White Sugar; 1000 ml Water",
    yieldMl: 1626,
    stepMl: 813,
    vesselMaxMl: 9756,
    ...POT,
    method: "Stir warm until clear. Cool, date, chill.",
  }),
  prep("Rich Demerara Syrup", {
    spec: "2000 g Demerara Sugar; 1 l Water",
    yieldMl: 2261,
    stepMl: 1130.5,
    vesselMaxMl: 4522,
    ...POT,
    method:
      "Two to one by weight. Warm, do not boil. Keep at room temperature: it can crystallise when chilled.",
  }),
  prep("Ginger Syrup", {
    spec: "1 l Simple Syrup; 300 g Ginger Root",
    yieldMl: 1100,
    stepMl: 550,
    vesselMaxMl: 3300,
    ...POT,
    shelfLifeDays: 10,
    method: "Blend, strain through cloth, date.",
  }),
  prep("Grapefruit Cordial", {
    spec: "6 each Grapefruit Peel; 600 g White Sugar; 30 g Citric Acid; 600 ml Water",
    yieldMl: 1000,
    stepMl: 500,
    vesselMaxMl: 3000,
    ...POT,
    standingHours: 12,
    shelfLifeDays: 14,
    method: "Rub the peels with the sugar, stand overnight, add acid and water, strain.",
  }),
  prep("House Almond Syrup", {
    spec: "400 g Almonds; 800 g White Sugar; 800 ml Water",
    yieldMl: 1200,
    stepMl: 600,
    vesselMaxMl: 2400,
    ...POT,
    standingHours: 8,
    shelfLifeDays: 10,
    method: "Soak, blend, press, sweeten. Contains almonds: label it.",
  }),
  prep("Chilli Agave Infusion", {
    spec: "2 l Cinderpalm Blanco Agave; 20 g Red Chilli",
    yieldMl: 1900,
    stepMl: 950,
    vesselMaxMl: 3800,
    ...POT,
    standingHours: 6,
    shelfLifeDays: 30,
    coverDays: 6,
    method: "Steep six hours, taste, strain.",
  }),
  prep("Cucumber Gin", {
    spec: "1 l Wickerlamp Dry Gin; 1 each Cucumber",
    yieldMl: 960,
    stepMl: 960,
    vesselMaxMl: 2880,
    ...POT,
    standingHours: 4,
    shelfLifeDays: 14,
    coverDays: 5,
    method: "Peel, slice, steep four hours, strain.",
  }),
  prep("Bottled Lantern Martini", {
    spec: "1500 ml Wickerlamp Dry Gin; 300 ml Dunmarrow Dry Vermouth; 20 dash Tarwick Orange Bitters; 400 ml Water",
    yieldMl: 2200,
    stepMl: 1100,
    vesselMaxMl: 4400,
    ...POT,
    standingHours: 4,
    shelfLifeDays: 30,
    coverDays: 5,
    method: "Stir with the water, bottle, chill hard.",
  }),
  prep("Saline", {
    spec: "20 g Fine Salt; 80 ml Water",
    yieldMl: 87,
    stepMl: 87,
    vesselMaxMl: 870,
    activeMinutes: 2,
    standingHours: 0,
    shelfLifeDays: 30,
    coverDays: 1,
    method: "Stir until clear.",
  }),
  prep("Honey Mix", {
    spec: "300 g Honey; 100 ml Water",
    yieldMl: 310,
    stepMl: 310,
    vesselMaxMl: 1240,
    activeMinutes: 5,
    standingHours: 0,
    shelfLifeDays: 14,
    coverDays: 1,
    method: "Warm and stir.",
  }),
];

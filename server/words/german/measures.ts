import type { Sentences } from "#server/words/translator.ts";

/** What engine/measure and engine/prep say. */
export const MEASURES: Sentences = {
  "A blend needs at least one part with a volume.":
    "Eine Mischung braucht mindestens einen Teil mit einem Volumen.",
  "Water brings {0} % vol to less, not to {1} % vol.":
    "Wasser bringt {0} % vol auf weniger, nicht auf {1} % vol.",
  "{0} ml of {1} % vol and {2} °Bx cannot weigh {3} g; measure its density again.":
    "{0} ml mit {1} % vol und {2} °Bx können nicht {3} g wiegen; miss die Dichte noch einmal.",
  "A part of {0} % vol with sugar ({1} °Bx) needs its density: weigh a full and an empty bottle.":
    "Ein Teil mit {0} % vol und Zucker ({1} °Bx) braucht seine Dichte: Wiege eine volle und eine leere Flasche.",
  "{0} g is not a weight of this container: empty it weighs about {1} g, full {2} g. Weigh it again, or check its empty weight and density.":
    "{0} g ist kein Gewicht dieses Behälters: Leer wiegt er etwa {1} g, voll {2} g. Wiege ihn noch einmal, oder prüfe Leergewicht und Dichte.",
  "The part left in an open container": "Der Rest in einem offenen Behälter",
  "empty weight": "Leergewicht",
  "full weight": "Vollgewicht",
  "A full container of {0} ml cannot weigh {1} g at {2} g/ml; weigh a full one again.":
    "Ein voller Behälter mit {0} ml kann bei {2} g/ml nicht {1} g wiegen; wiege noch einmal einen vollen.",
  "usual for its size": "üblich für seine Größe",
  "No usual empty weight is known for a container of {0} ml: weigh an empty one, or read the stamp on it.":
    "Für einen Behälter mit {0} ml ist kein übliches Leergewicht bekannt: Wiege einen leeren oder lies seinen Stempel.",
  "weighed full and empty": "voll und leer gewogen",
  'A full container of "{0}" is said to weigh {1} g and an empty one {2} g; weigh both again.':
    "Ein voller Behälter „{0}“ soll {1} g und ein leerer {2} g wiegen; wiege beide noch einmal.",
  "The strength in % vol of a drink to be shaken or stirred":
    "Die Stärke in % vol eines Drinks, der geschüttelt oder gerührt wird",
  "gin, rum, vodka or whisky": "Gin, Rum, Wodka oder Whisky",
  "still wine": "Stillwein",
  "fortified wine": "Likörwein",
  "draught beer": "Fassbier",
  "{0} must lie from {1} to {2}; it is {3}.": "{0} muss zwischen {1} und {2} liegen, nicht bei {3}.",
  "The share of ethanol in the weight": "Der Anteil Ethanol am Gewicht",
  "The temperature of a spirit in °C": "Die Temperatur einer Spirituose in °C",
  "At {0} °C a mixture of {1} % vol is ice or slush and has no density; weigh it warmer.":
    "Bei {0} °C ist eine Mischung mit {1} % vol Eis oder Matsch und hat keine Dichte; wiege sie wärmer.",
  "At {0} °C ethanol and water have a density from {1} to {2} g/ml; {3} is outside. Sugar in it makes a spirit heavier: use a stated strength.":
    "Bei {0} °C haben Ethanol und Wasser eine Dichte von {1} bis {2} g/ml; {3} liegt außerhalb. Zucker macht eine Spirituose schwerer: Nimm die angegebene Stärke.",
  "Directive 2007/45/EC, annex; gov.uk, Specified quantities":
    "Richtlinie 2007/45/EG, Anhang; gov.uk, Specified quantities",
  "sparkling wine": "Schaumwein",
  "°Brix of a sugar solution": "°Brix einer Zuckerlösung",
  "The temperature of a sugar solution in °C": "Die Temperatur einer Zuckerlösung in °C",
  "The density in g/ml of a sugar solution at {0} °C": "Die Dichte in g/ml einer Zuckerlösung bei {0} °C",
  "Grams of sugar in a litre of solution": "Gramm Zucker in einem Liter Lösung",
  "Acid in % of the weight": "Säure in % des Gewichts",
  "A specific gravity of a sugar solution": "Eine relative Dichte einer Zuckerlösung",
  "A syrup needs weights of sweetener and water that are not negative, and not both 0.":
    "Ein Sirup braucht Gewichte von Süßmittel und Wasser, die nicht negativ und nicht beide 0 sind.",
  "°Brix of a syrup of {0}": "°Brix eines Sirups aus {0}",
  "The volume of a syrup in ml": "Das Volumen eines Sirups in ml",
  "°Brix wanted of {0}": "Gewünschte °Brix von {0}",
  "{0} °Bx is above saturation at {1} °C ({2} °Bx): sugar can crystallise. Keep it warmer or make it thinner.":
    "{0} °Bx liegt bei {1} °C über der Sättigung ({2} °Bx): Zucker kann auskristallisieren. Halte ihn wärmer oder mach ihn dünner.",
  "A correlation names input {0}; there is none.":
    "Eine Korrelation nennt den Eingang {0}; den gibt es nicht.",
  "lime juice": "Limettensaft",
  "lemon juice": "Zitronensaft",
  "orange juice": "Orangensaft",
  "grapefruit juice": "Grapefruitsaft",
  "pineapple juice": "Ananassaft",
  "apple juice": "Apfelsaft",
  "pomegranate juice": "Granatapfelsaft",
  "passion fruit juice": "Maracujasaft",
  "tomato juice": "Tomatensaft",
  "sweetened condensed milk": "gezuckerte Kondensmilch",
  "whole milk": "Vollmilch",
  "heavy cream": "Sahne",
  "coffee liqueur": "Kaffeelikör",
  "crème de menthe": "Crème de Menthe",
  "tonic water": "Tonic Water",
  "soda water": "Sodawasser",
  "dessert wine": "Dessertwein",
  "table wine": "Tischwein",
  "passion fruit": "Maracuja",
  "USDA SR26, juice of one {0}": "USDA SR26, Saft eines Stücks {0}",
  "{0}, at {1} g a piece": "{0}, bei {1} g das Stück",
  "Pieces pressed": "Gepresste Stücke",
  "Juice in ml": "Saft in ml",
  ", and own batches": ", und eigene Chargen",
  "{0}, and own batches": "{0}, und eigene Chargen",
  "Certainty of a plan": "Sicherheit eines Plans",
  "Juice wanted in ml": "Gewünschter Saft in ml",
  "The surely expected ml of a piece": "Die sicher zu erwartenden ml eines Stücks",
  "No allergens recorded.": "Keine Allergene erfasst.",
  "Check before serving.": "Vor dem Ausschank prüfen.",
  "Check the labels of everything that goes in.": "Prüfe die Etiketten von allem, was hineinkommt.",
  "No allergens are recorded.": "Es sind keine Allergene erfasst.",
  "Contains: {0}.": "Enthält: {0}.",
  "Allergens. {0}": "Allergene. {0}",
  "granulated sugar": "Kristallzucker",
  "agave syrup": "Agavensirup",
  "maple syrup": "Ahornsirup",
  "dry goods": "Trockenwaren",
  "May contain: {0}.": "Kann enthalten: {0}.",
  '"{0}" is not made here on {1}: it needs a spec and a preps row, or a cut, from that day or before.':
    "„{0}“ wird am {1} hier nicht gemacht: Es braucht ein Rezept und eine Ausbeute, oder einen Schnitt, ab diesem Tag oder früher.",
  "Give one size: make, scaleTo or vessel.": "Gib eine Größe an: make, scaleTo oder vessel.",
  "The amount to make": "Die herzustellende Menge",
  '"{0}" takes no "{1}"; it takes {2}.': "In „{0}“ kommt kein „{1}“; hinein kommen {2}.",
  'The amount of "{0}"': "Die Menge von „{0}“",
  '"{0}" has no vessel_max in its preps row; give an amount instead.':
    "Für „{0}“ ist keine Gefäßgröße angegeben; gib stattdessen eine Menge an.",
  "{0} must be above 0; it is {1}.": "{0} muss über 0 liegen, nicht bei {1}.",
  " ({0} to {1})": " ({0} bis {1})",
  "Raw or lightly treated egg: your local food code may ask for pasteurised egg, a notice to guests and chilling; check it before serving.":
    "Rohes oder kaum erhitztes Ei: Die örtlichen Lebensmittelvorschriften können pasteurisiertes Ei, einen Hinweis an Gäste und Kühlung verlangen; prüfe sie vor dem Ausschank.",
  "Dairy: keep chilled and date-mark as your local food code asks.":
    "Milchprodukte: kühl halten und datieren, wie die örtlichen Lebensmittelvorschriften es verlangen.",
  "Fresh juice: date-mark and chill as your local food code asks; bottling juice for sale can need treatment or a warning label.":
    "Frischer Saft: datieren und kühlen, wie die örtlichen Lebensmittelvorschriften es verlangen; abgefüllter Saft zum Verkauf kann eine Behandlung oder einen Warnhinweis brauchen.",
  "Garlic, herbs, vegetables or fruit in oil or in a low-acid liquid can grow dangerous bacteria without looking or smelling spoiled: check acidity, temperature and time against your local food code before making it.":
    "In Knoblauch, Kräutern, Gemüse oder Obst in Öl oder säurearmer Flüssigkeit können gefährliche Bakterien wachsen, ohne dass es verdorben aussieht oder riecht: Prüfe vor dem Ansetzen Säure, Temperatur und Zeit nach den örtlichen Lebensmittelvorschriften.",
  "Nuts: use separate, clean tools, label every container, and tell guests who ask.":
    "Schalenfrüchte: getrennte, saubere Geräte benutzen, jeden Behälter beschriften und Gästen Auskunft geben.",
  "Quinine or cinchona bark: amounts are limited by law and too much is harmful; check the limits that apply to you, or buy it made.":
    "Chinin oder Chinarinde: Die Menge ist gesetzlich begrenzt, und zu viel schadet; prüfe die für euch geltenden Grenzen oder kauft es fertig.",
  "Dry ice or liquid nitrogen: cold burns and lack of air; trained staff and moving air only, and nothing of it may reach a guest. Follow local rules.":
    "Trockeneis oder flüssiger Stickstoff: Kälteverbrennung und Luftmangel; nur geschultes Personal und bewegte Luft, und nichts davon darf zum Gast. Halte die örtlichen Vorschriften ein.",
  "Strong spirit near heat: its vapour catches fire; keep it from flames and follow local fire rules.":
    "Starke Spirituose nahe an Hitze: Ihr Dampf entzündet sich; halte sie von Flammen fern und beachte die örtlichen Brandschutzregeln.",
  "Keeps less long than the mix: {0}. Check whether your local food code dates a mix by its earliest ingredient.":
    "Hält kürzer als die Mischung: {0}. Prüfe, ob die örtlichen Lebensmittelvorschriften eine Mischung nach ihrer kürzesten Zutat datieren.",
  "the sheet": "dem Blatt",
  "Use by ________ (no shelf life on record)": "Zu verbrauchen bis ________ (keine Haltbarkeit erfasst)",
  "Use by {0}": "Zu verbrauchen bis {0}",
  ", about {0} % vol": ", etwa {0} % vol",
  'Nothing says how "{0}" is made on {1}.': "Nichts sagt, wie „{0}“ am {1} gemacht wird.",
  "No price is known of {0}.": "Von {0} ist kein Preis bekannt.",
  '"{0}" has no active_minutes or no batch size: its labour is left out.':
    "Für „{0}“ fehlen Arbeitsminuten oder Chargengröße: Die Arbeit ist nicht eingerechnet.",
  'No price is known at which "{0}" can be bought.':
    "Es ist kein Preis bekannt, zu dem „{0}“ zu kaufen wäre.",
  "A share lost must lie from 0 to below 1; it is {0}.":
    "Ein verlorener Anteil muss von 0 bis unter 1 liegen, nicht bei {0}.",
  "By weight these inputs come to {0} ml at 20 °C, the sheet says {1} ml: measure the batch and mend the yield, unless it is boiled down or strained.":
    "Nach Gewicht ergeben diese Zutaten {0} ml bei 20 °C, das Blatt sagt {1} ml: Miss die Charge und berichtige die Ausbeute, außer sie wird eingekocht oder abgeseiht.",
  "Batches that wait for each other have no order.":
    "Chargen, die aufeinander warten, haben keine Reihenfolge.",
  "The last {0} batches gave {1} % {2} than the sheet: allow for it, or mend the yield.":
    "Die letzten {0} Chargen gaben {1} % {2} als das Blatt: Rechne damit oder berichtige die Ausbeute.",
};

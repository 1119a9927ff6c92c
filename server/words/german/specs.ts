import type { Sentences } from "#server/words/translator.ts";

/** What is said of specs and of their text. */
export const SPECS: Sentences = {
  "How much {0} tops up depends on the glass.": "Wie viel {0} auffüllt, hängt vom Glas ab.",
  'A spec names "{0}", which the catalogue has not.': "Ein Rezept nennt „{0}“, das es nicht gibt.",
  "A prep is made of itself: {0}. Take one of these lines out of its spec.":
    "Eine Zubereitung besteht aus sich selbst: {0}. Nimm eine dieser Zeilen aus ihrem Rezept.",
  "or {0}": "oder {0}",
  '"{0}" does not begin with an item\'s name: write the item right after the amount.':
    "„{0}“ beginnt nicht mit dem Namen eines Artikels: Schreib den Artikel gleich nach der Menge.",
  '"{0}" is a vessel or a tool: leave the line out.': "„{0}“ ist ein Gefäß oder Gerät: Lass die Zeile weg.",
  '"|" in "{0}" is not understood: write the amount and the item\'s name.':
    "„|“ in „{0}“ ist unverständlich: Schreib die Menge und den Namen des Artikels.",
  'No item is named behind "{0}": write it after the amount.':
    "Nach „{0}“ ist kein Artikel genannt: Schreib ihn nach der Menge.",
  '"{0}" is too long for an item\'s name: put remarks behind a comma.':
    "„{0}“ ist zu lang für den Namen eines Artikels: Setz Bemerkungen hinter ein Komma.",
  '"{0}" says how a thing is, not what it is: write the item\'s name.':
    "„{0}“ sagt, wie etwas ist, nicht, was es ist: Schreib den Namen des Artikels.",
  '"{0}" in "{1}" is not understood: write only the item\'s name after the amount.':
    "„{0}“ in „{1}“ ist unverständlich: Schreib nach der Menge nur den Namen des Artikels.",
  '"{0}" joins two items in "{1}": write one item on a line.':
    "„{0}“ verbindet zwei Artikel in „{1}“: Schreib einen Artikel je Zeile.",
  "how many? Write a number.": "wie viele? Schreib eine Zahl.",
  "write oz, ml, cl, dash, barspoon, g … or a number of pieces.":
    "schreib cl, ml, Spritzer, BL, g … oder eine Stückzahl.",
  '"{0}" is not a measure that can be reckoned with: {1}':
    "„{0}“ ist kein Maß, mit dem sich rechnen lässt: {1}",
  "without ": "ohne ",
  "about {0}": "etwa {0}",
  '"{0}" may be a second item: write one item on a line, with its amount.':
    "„{0}“ ist vielleicht ein zweiter Artikel: Schreib einen Artikel je Zeile, mit seiner Menge.",
  ", plus ": ", plus ",
  '"{0}" holds more than one entry: write each on a line.':
    "„{0}“ enthält mehr als einen Eintrag: Schreib jeden auf eine Zeile.",
  '"{0}" is not part of an item\'s name: leave it out.':
    "„{0}“ gehört nicht zum Namen eines Artikels: Lass es weg.",
  'A bracket is not closed in "{0}": close it or leave it out.':
    "In „{0}“ ist eine Klammer nicht geschlossen: Schließe sie oder lass sie weg.",
  "{0} or {1}": "{0} oder {1}",
  '"{0}" lists several items: join their full names by "or".':
    "„{0}“ zählt mehrere Artikel auf: Verbinde ihre vollen Namen mit „oder“.",
  '"{0}" names more items: write one item on a line.':
    "„{0}“ nennt mehrere Artikel: Schreib einen Artikel je Zeile.",
  '"{0}" is a second item: write one item on a line.':
    "„{0}“ ist ein zweiter Artikel: Schreib einen je Zeile.",
  '"{0}" is a second measure: write one item on a line.':
    "„{0}“ ist ein zweites Maß: Schreib einen Artikel je Zeile.",
  '"{0}" in "{1}" is a second item: write one item on a line.':
    "„{0}“ in „{1}“ ist ein zweiter Artikel: Schreib einen je Zeile.",
  "A spec line needs a unit and an item to be printed.":
    "Eine Rezeptzeile braucht zum Drucken eine Einheit und einen Artikel.",
  'The spec line of "{0}" needs an amount to be printed.':
    "Die Rezeptzeile „{0}“ braucht zum Drucken eine Menge.",
  '"{0} to {1}" is no range to take a mean of: write one amount.':
    "Aus „{0} bis {1}“ lässt sich kein Mittel nehmen: Schreib eine Menge.",
  "{0} to {1}": "{0} bis {1}",
  '"{0}" is no amount: write a number above 0, as 1 1/2 or 0.75.':
    "„{0}“ ist keine Menge: Schreib eine Zahl über 0, wie 1 1/2 oder 0,75.",
  '"{0}" can be read two ways: write {1}, or more or fewer decimals.':
    "„{0}“ lässt sich auf zwei Arten lesen: Schreib {1}, oder mehr oder weniger Nachkommastellen.",
  '"{0}" can be read two ways: write {1} {2}/{3}, or a decimal.':
    "„{0}“ lässt sich auf zwei Arten lesen: Schreib {1} {2}/{3}, oder eine Dezimalzahl.",
  '"{0}" can be read two ways: write "g", or the whole word it is short for.':
    "„{0}“ lässt sich auf zwei Arten lesen: Schreib „g“, oder das ganze Wort, für das es steht.",
  '"each" is of several items: write one item on a line.':
    "„each“ meint mehrere Artikel: Schreib einen Artikel je Zeile.",
  '"{0}" in "{1} {2}" is not understood: write oz, ml, g … or only what is counted.':
    "„{0}“ in „{1} {2}“ ist unverständlich: Schreib cl, ml, g … oder nur, was gezählt wird.",
  'No unit between the amount and "{0}": write oz, ml, dash … or "each" for pieces.':
    "Keine Einheit zwischen Menge und „{0}“: Schreib cl, ml, Spritzer … oder „Stück“.",
  '"{0}" is no size of a container: write the whole amount.':
    "„{0}“ ist keine Größe eines Behälters: Schreib die ganze Menge.",
  '"{0}" is about the drink and names no item: leave the line out.':
    "„{0}“ betrifft den Drink und nennt keinen Artikel: Lass die Zeile weg.",
  "{0} egg {1}": "{0} egg {1}",
  'No unit is written in "{0}": write "oz lemon juice", say, or "3/4 lemon" for the fruit.':
    "In „{0}“ steht keine Einheit: Schreib etwa „oz lemon juice“, oder „3/4 lemon“ für die Frucht.",
  '"{0} of {1}" has no number of pieces: write "{2} of 1 …".':
    "„{0} of {1}“ hat keine Stückzahl: Schreib „{2} of 1 …“.",
  '"{0}" reads like an instruction, not like an amount of an item.':
    "„{0}“ liest sich wie eine Anweisung, nicht wie die Menge eines Artikels.",
  'No amount is written in "{0}": begin with a number.':
    "In „{0}“ steht keine Menge: Beginne mit einer Zahl.",
  'No amount is written before "{0}": begin with a number and a unit, or with "top".':
    "Vor „{0}“ steht keine Menge: Beginne mit einer Zahl und einer Einheit, oder mit „mit … auffüllen“.",
  '":" in "{0}" is not understood: leave out what stands before or behind it.':
    "„:“ in „{0}“ ist unverständlich: Lass weg, was davor oder dahinter steht.",
  '"{0}" does not fill a glass up: write its amount.': "„{0}“ füllt kein Glas auf: Schreib die Menge.",
  "Add it to the items.": "Füge es den Artikeln hinzu.",
  "Did you mean {0}?": "Meinst du {0}?",
  'No item "{0}". {1}': "Kein Artikel „{0}“. {1}",
  '"{0}" adds a second measure: write the sum as one amount.':
    "„{0}“ fügt ein zweites Maß hinzu: Schreib die Summe als eine Menge.",
  "{0} {1} and {2} {3} are not the same amount: write the right one alone.":
    "{0} {1} und {2} {3} sind nicht dieselbe Menge: Schreib nur die richtige.",
  "{0} {1} plus {2}": "{0} {1} plus {2}",
  '"{0}" has a line break and cannot be printed on one line.':
    "„{0}“ hat einen Zeilenumbruch und passt nicht auf eine Zeile.",
  '"{0}" is a fruit, and "{1}" measures what is poured: write the name of {2}.':
    "„{0}“ ist eine Frucht, und „{1}“ misst, was eingeschenkt wird: Schreib, was gemeint ist ({2}).",
  "its juice, a purée or a syrup": "ihr Saft, ein Püree oder ein Sirup",
  '"{0} - {1}" can be read two ways: write the amount first.':
    "„{0} - {1}“ lässt sich auf zwei Arten lesen: Schreib die Menge zuerst.",
};

import type { Sentences } from "#server/words/translator.ts";

/** What is said of the sheets of a book and of the facts that are entered. */
export const BOOK: Sentences = {
  "{0}: {1} items, {2} drinks, {3} count rows, {4} sales files":
    "{0}: {1} Artikel, {2} Drinks, {3} Zählzeilen, {4} Verkaufsdateien",
  "The database holds no venue yet; load a book first.":
    "In der Datenbank ist noch keine Bar; lade zuerst ein Buch.",
  "the text is {0} characters long; shorten it": "der Text ist {0} Zeichen lang; kürze ihn",
  "{0} is none of {1}": "{0} ist keines von {1}",
  "{0} is neither yes nor no": "{0} ist weder yes noch no",
  "must be more than 0": "muss mehr als 0 sein",
  "must not be negative": "darf nicht negativ sein",
  "must lie between 0 and 100": "muss zwischen 0 und 100 liegen",
  "must lie between 0 (empty) and 1 (full)": "muss zwischen 0 (leer) und 1 (voll) liegen",
  "must lie between 0 and 1, as 0.95": "muss zwischen 0 und 1 liegen, wie 0.95",
  "must be a whole number, 1 or more": "muss eine ganze Zahl ab 1 sein",
  "{0} has more than the {1} decimals of the venue's money":
    "{0} hat mehr als die {1} Nachkommastellen der Währung",
  "{0} is too large to be meant": "{0} ist zu groß, um gemeint zu sein",
  "{0} has a point, where the sheet's other numbers have a decimal comma":
    "{0} hat einen Punkt, wo die anderen Zahlen des Blatts ein Dezimalkomma haben",
  "{0} has a comma, where the sheet's other numbers have a decimal point":
    "{0} hat ein Komma, wo die anderen Zahlen des Blatts einen Dezimalpunkt haben",
  "{0} can be read two ways; write it without a mark between thousands":
    "{0} kann auf zwei Arten gelesen werden; schreib es ohne Tausendertrennzeichen",
  "{0} is no number; write it like 0.75, 3/4 or 1 1/2":
    "{0} ist keine Zahl; schreib sie wie 0.75, 3/4 oder 1 1/2",
  "it ends on {0}, before it begins on {1}": "es endet am {0}, bevor es am {1} beginnt",
  "{0} is already in row {1}; keep one": "{0} steht schon in Zeile {1}; behalte eine",
  "this item, in this area and pack of this count,":
    "dieser Artikel, in diesem Bereich und Gebinde dieser Zählung,",
  "the row counts nothing; write how many are full (0 if there is none there), or an amount":
    "die Zeile zählt nichts; schreib, wie viele voll sind (0, wenn dort nichts ist), oder eine Menge",
  "the cell is empty; an amount needs its unit": "die Zelle ist leer; eine Menge braucht ihre Einheit",
  "{0} has no pack that says what a container holds; add one, or write amount and unit":
    "{0} hat kein Gebinde, das sagt, was ein Behälter fasst; füge eines hinzu oder schreib Menge und Einheit",
  "the cell is empty, but {0} comes as {1}; write which was counted":
    "die Zelle ist leer, aber {0} gibt es als {1}; schreib, was gezählt wurde",
  "in {0}, kept at {1} °C by venue.json, a level of {2} cannot be reckoned: {3} Weigh it or write an amount instead":
    "in {0}, nach venue.json bei {1} °C gehalten, lässt sich ein Füllstand von {2} nicht berechnen: {3} Wiege es oder schreib stattdessen eine Menge",
  "no area is called {0}, so its temperature is not used{1}":
    "kein Bereich heißt {0}, also wird seine Temperatur nicht benutzt{1}",
  "piece_g in items.csv": "piece_g in items.csv",
  "density_g_per_ml or brix in items.csv, or empty_g and full_g in packs.csv":
    "density_g_per_ml oder brix in items.csv, oder empty_g und full_g in packs.csv",
  "to weigh {0}, its density must be known; add {1}":
    "um {0} zu wiegen, muss seine Dichte bekannt sein; ergänze {1}",
  "nothing says what an empty container of {0} weighs, so the usual weight for its size is taken; add empty_g in packs.csv":
    "nichts sagt, was ein leerer Behälter {0} wiegt, also gilt das übliche Gewicht seiner Größe; ergänze empty_g in packs.csv",
  "{0} is not in areas.csv; it was taken as an area of its own":
    "{0} steht nicht in areas.csv; es wurde als eigener Bereich genommen",
  "a prep cannot be made of itself, but{0} {1}":
    "eine Zubereitung kann nicht aus sich selbst bestehen, aber{0} {1}",
  "needs {0}": "braucht {0}",
  ", which ": ", das ",
  "{0} is on invoice {1} in row {2} too; both were taken":
    "{0} steht auch in Zeile {2} auf Rechnung {1}; beide wurden genommen",
  "{0} is no prep; add it to preps.csv, or to cuts.csv if it is cut or pressed":
    "{0} ist keine Zubereitung; ergänze preps.csv, oder cuts.csv, wenn es geschnitten oder gepresst wird",
  "{0} is made to order, so drinks already use what it is made of; a batch of it counts twice":
    "{0} wird auf Bestellung gemacht, also verbrauchen Drinks schon seine Zutaten; eine Charge davon zählt doppelt",
  "what this batch used of this item": "was diese Charge von diesem Artikel verbraucht hat",
  "no batch of {0} at that time{1}; batches.csv must have it":
    "keine Charge {0} zu dieser Zeit{1}; sie muss in batches.csv stehen",
  "a batch does not use what it makes": "eine Charge verbraucht nicht, was sie herstellt",
  "{0} is made to order; write what was used to make it":
    "{0} wird auf Bestellung gemacht; schreib, was dafür verbraucht wurde",
  "{0} is an item, not a drink; write its amount in another unit":
    "{0} ist ein Artikel, kein Drink; schreib seine Menge in einer anderen Einheit",
  "{0} is a drink; its unit is serve": "{0} ist ein Drink; seine Einheit ist serve",
  "{0} (or write ignore)": "{0} (oder schreib ignore)",
  "this ring name": "dieser Kassenname",
  "an amount": "eine Menge",
  "the cell is empty, though there is {0}; fill in both or neither":
    "die Zelle ist leer, obwohl es {0} gibt; fülle beide oder keine",
  "only an item poured straight has an amount; it is not used":
    "nur ein pur ausgeschenkter Artikel hat eine Menge; sie wird nicht benutzt",
  "{0} has no pack, so a sale of it needs an amount and a unit; until then it counts as unmapped":
    "{0} hat kein Gebinde, also braucht ein Verkauf Menge und Einheit; bis dahin gilt er als nicht zugeordnet",
  "the cell is empty; the effect {0} needs it": "die Zelle ist leer; die Wirkung {0} braucht sie",
  "the cell is empty; a swap has both an amount and a unit, or neither":
    "die Zelle ist leer; ein Tausch hat Menge und Einheit, oder keines von beiden",
  "{0} is also a drink, so specs.csv cannot tell the two apart; rename one":
    "{0} ist auch ein Drink, also kann specs.csv beide nicht unterscheiden; benenne eines um",
  "{0} has no lines in specs.csv and no cut, so its batches use nothing":
    "{0} hat keine Zeilen in specs.csv und keinen Schnitt, also verbrauchen seine Chargen nichts",
  "this prep from this day": "diese Zubereitung ab diesem Tag",
  "{0} has spec lines but no row in preps.csv; add one with what they yield":
    "{0} hat Rezeptzeilen, aber keine Zeile in preps.csv; ergänze eine mit der Ausbeute",
  "no drink or prep {0}": "kein Drink und keine Zubereitung {0}",
  "a prep's line needs an amount and a unit; only a drink can be topped up":
    "die Zeile einer Zubereitung braucht Menge und Einheit; nur ein Drink wird aufgefüllt",
  "the cell is empty; only a line with the unit top has no amount":
    "die Zelle ist leer; nur eine Zeile mit der Einheit top hat keine Menge",
  "a line with the unit top has no amount; empty the cell or write another unit":
    "eine Zeile mit der Einheit top hat keine Menge; leere die Zelle oder schreib eine andere Einheit",
  "this line of this version": "diese Zeile dieser Fassung",
  "{0} is kept in {1}; a fruit is cut by the piece, so keep it in each":
    "{0} wird in {1} geführt; Obst wird stückweise geschnitten, also führe es in each",
  "{0} is already given by {1} (row {2}); what a cut gives has one source":
    "{0} kommt schon von {1} (Zeile {2}); was ein Schnitt gibt, hat eine Quelle",
  "this cut from this day": "dieser Schnitt ab diesem Tag",
  "one {0} is said to give {1} ml; published is about {2} ml ({3}; bars report less). Check the unit":
    "ein Stück {0} soll {1} ml geben; veröffentlicht sind etwa {2} ml ({3}; Bars berichten von weniger). Prüfe die Einheit",
  "{0}, and no drink of that name": "{0}, und kein Drink dieses Namens",
  "no item or drink {0}": "kein Artikel und kein Drink {0}",
  "this item in this area": "dieser Artikel in diesem Bereich",
  "{0} is made in house, but neither preps.csv nor cuts.csv says how":
    "{0} wird im Haus gemacht, aber weder preps.csv noch cuts.csv sagt, wie",
  "{0} is sold in no bottle of {1} ml in the US (27 CFR 4.72, 5.203), the EU or the UK (Directive 2007/45/EC); the nearest are {2} ml. Check the label":
    "{0} wird in den USA (27 CFR 4.72, 5.203), der EU und dem Vereinigten Königreich (Richtlinie 2007/45/EG) in keiner Flasche mit {1} ml verkauft; am nächsten sind {2} ml. Prüfe das Etikett",
  "a keg of {0} holds {1} l (27 CFR 25.156: a barrel is 31 US gallons), not {2} l":
    "ein Fass {0} fasst {1} l (27 CFR 25.156: ein barrel sind 31 US-Gallonen), nicht {2} l",
  "a full container cannot weigh {0} g and an empty one {1} g; weigh both again":
    "ein voller Behälter kann nicht {0} g und ein leerer {1} g wiegen; wiege beide noch einmal",
  "the cell is empty; the price was taken as that of one container, not of the case":
    "die Zelle ist leer; der Preis gilt für einen Behälter, nicht für die Kiste",
  "{0} is no GTIN (its check digit or length is wrong); scan it again":
    "{0} ist keine GTIN (Prüfziffer oder Länge ist falsch); scanne sie noch einmal",
  "this pack, from this supplier and day,": "dieses Gebinde, von diesem Lieferanten und Tag,",
  "{0} is kept in {1}, which {2} does not lead to; write another unit or add {3} in items.csv{4}":
    "{0} wird in {1} geführt, wohin {2} nicht führt; schreib eine andere Einheit oder ergänze {3} in items.csv{4}",
  "a {0} weighs about {1} g as bought": "ein Stück {0} wiegt gekauft etwa {1} g",
  "{0} weighs about {1} g/ml": "{0} wiegt etwa {1} g/ml",
  "density_g_per_ml (or brix, or the weights of an empty and a full container)":
    "density_g_per_ml (oder brix, oder das Gewicht eines leeren und eines vollen Behälters)",
  "piece_g and {0}": "piece_g und {0}",
  'a quotation mark is not closed; close it, and write "" for one inside a text':
    'ein Anführungszeichen ist nicht geschlossen; schließe es, und schreib "" für eines im Text',
  "this is no text; save the sheet as CSV in UTF-8":
    "das ist kein Text; speichere das Blatt als CSV in UTF-8",
  "line {0} is {1} characters long, which no sheet has; check that the file is whole":
    "Zeile {0} ist {1} Zeichen lang, was kein Blatt hat; prüfe, ob die Datei ganz ist",
  "the sheet has more than {0} lines; check that it is the right file":
    "das Blatt hat mehr als {0} Zeilen; prüfe, ob es die richtige Datei ist",
  "the sheet is larger than {0} MB; check that it is the right file":
    "das Blatt ist größer als {0} MB; prüfe, ob es die richtige Datei ist",
  "there is no folder {0}; name the folder that holds {1}":
    "es gibt keinen Ordner {0}; nenne den Ordner mit {1}",
  "{0}: it is no sheet of the book and was not read{1}":
    "{0}: es ist kein Blatt des Buchs und wurde nicht gelesen{1}",
  "{0} is not empty and holds no {1}; name an empty or a new folder":
    "{0} ist nicht leer und enthält kein {1}; nenne einen leeren oder neuen Ordner",
  "{0} is a file; name a folder to write the book to":
    "{0} ist eine Datei; nenne einen Ordner, in den das Buch geschrieben wird",
  "{0}: the file is larger than {1} MB; check that it is the right one":
    "{0}: die Datei ist größer als {1} MB; prüfe, ob es die richtige ist",
  "{0}: the file is not UTF-8; save it as CSV UTF-8":
    "{0}: die Datei ist nicht UTF-8; speichere sie als CSV UTF-8",
  "{0}/{1}: it is no sales file (.csv, .tsv, .txt) and was not read":
    "{0}/{1}: es ist keine Verkaufsdatei (.csv, .tsv, .txt) und wurde nicht gelesen",
  "{0} has a meaning of its own in other sheets; choose another name":
    "{0} hat in anderen Blättern eine eigene Bedeutung; wähle einen anderen Namen",
  "{0} is already in row {1}; give each {2} one row":
    "{0} steht schon in Zeile {1}; gib jedem Eintrag ({2}) eine Zeile",
  "no {0} {1}": "es gibt nicht: {0} {1}",
  "no pack {0} of {1}; it has {2}": "kein Gebinde {0} von {1}; es hat {2}",
  "… and {0} more": "… und {0} mehr",
  "{0} row {1}": "{0} Zeile {1}",
  "{0} and {1}": "{0} und {1}",
  "{0} and {1} more": "{0} und {1} mehr",
  "the file is missing": "die Datei fehlt",
  "{0} is not listed there; it was taken from {1}":
    "{0} ist dort nicht aufgeführt; es wurde aus {1} genommen",
  "the row has more cells than there are headings ({0}); a text or number with a comma needs quotation marks":
    "die Zeile hat mehr Zellen als Überschriften ({0}); ein Text oder eine Zahl mit Komma braucht Anführungszeichen",
  "column {0} has no heading": "Spalte {0} hat keine Überschrift",
  "the column {0} is not known": "die Spalte {0} ist nicht bekannt",
  "{0} and was not read{1}": "{0} und wurde nicht gelesen{1}",
  "there are two columns of this name; keep one": "es gibt zwei Spalten dieses Namens; behalte eine",
  "the column is missing{0}": "die Spalte fehlt{0}",
  "the cell is empty; fill it in": "die Zelle ist leer; fülle sie aus",
  "no part is named; write it like skin+flesh": "kein Teil ist genannt; schreib wie skin+flesh",
  "; did you mean {0}?": "; meinst du {0}?",
  "{0} is no time of day; write it like 17:30": "{0} ist keine Uhrzeit; schreib sie wie 17:30",
  "{0} is no weekday; write {1}": "{0} ist kein Wochentag; schreib {1}",
  "{0} is no time; write it like 2026-03-02 15:00":
    "{0} ist kein Zeitpunkt; schreib ihn wie 2026-03-02 15:00",
  "{0} is no time of day; write it like 2026-03-02 15:00":
    "{0} ist keine Uhrzeit; schreib wie 2026-03-02 15:00",
  "{0} is no time of day": "{0} ist keine Uhrzeit",
  "{0} is no date; write it like 2026-03-02": "{0} ist kein Datum; schreib es wie 2026-03-02",
  "there is no date {0}": "das Datum {0} gibt es nicht",
  "the file must hold one object, { … }": "die Datei muss ein Objekt enthalten, '{' … '}'",
  'it is missing; add "{0}"': "es fehlt; ergänze „{0}“",
  "{0} is no currency of ISO 4217": "{0} ist keine Währung nach ISO 4217",
  "entry {0}.": "Eintrag {0}.",
  "this is no JSON{0}; check its commas, brackets and quotation marks":
    "das ist kein JSON{0}; prüfe Kommas, Klammern und Anführungszeichen",
  " at line {0}": " in Zeile {0}",
  "{0} is not known and was not read{1}": "{0} ist nicht bekannt und wurde nicht gelesen{1}",
  "entry {0}": "Eintrag {0}",
  'The catalogue has no item "{0}".': "Einen Artikel „{0}“ gibt es nicht.",
  '"{0}" is kept in {1}; {2} {3} cannot be turned into it.':
    "„{0}“ wird in {1} geführt; {2} {3} lassen sich nicht umrechnen.",
  "{0} on {1}": "{0} am {1}",
  "{0}: the week to {1} is closed; nothing was changed. The owner can reopen it with a reason.":
    "{0}: Die Woche bis {1} ist abgeschlossen; nichts wurde geändert. Der Inhaber kann sie mit einem Grund wieder öffnen.",
  '"{0}" was weighed, but nothing in the book gives its density.':
    "„{0}“ wurde gewogen, aber nichts im Buch nennt seine Dichte.",
  "the list has more than {0} rows; split it.": "die Liste hat mehr als {0} Zeilen; teile sie.",
  "no row of headings names a product and a price. Give the columns headings such as Product, Size and Price.":
    "keine Überschriftenzeile nennt ein Produkt und einen Preis. Gib den Spalten Überschriften wie Produkt, Größe und Preis.",
  "names no product": "nennt kein Produkt",
  "“{0}” has no size that can be read, such as 70 cl or 6 x 1 L":
    "„{0}“ hat keine lesbare Größe, wie 70 cl oder 6 x 1 L",
  "“{0}” is no number of containers in a case": "„{0}“ ist keine Anzahl von Behältern in einer Kiste",
  "“{0}” is no price": "„{0}“ ist kein Preis",
  "has no price": "hat keinen Preis",
  "no such date; write it as 2026-11-23": "dieses Datum gibt es nicht; schreib es wie 2026-11-23",
  "a moment is written 2026-11-02T15:00:00Z": "ein Zeitpunkt wird geschrieben wie 2026-11-02T15:00:00Z",
  "no such moment": "diesen Zeitpunkt gibt es nicht",
  "a time of day is written HH:MM": "eine Uhrzeit wird geschrieben wie HH:MM",
  "a currency is three capital letters, as EUR": "eine Währung sind drei Großbuchstaben, wie EUR",
  "the bar needs a name": "die Bar braucht einen Namen",
  "a measure is more than 0 ml": "ein Maß ist mehr als 0 ml",
  "it is more than 0": "es ist mehr als 0",
  "a share is more than 0 % and less than 100 %": "ein Anteil ist mehr als 0 % und weniger als 100 %",
  "money at stake is 0 or more": "Geld, um das es geht, ist 0 oder mehr",
  "a temperature is at least −40 °C and at most 60 °C":
    "eine Temperatur ist mindestens −40 °C und höchstens 60 °C",
  "no such time zone": "diese Zeitzone gibt es nicht",
  'a country is two capital letters of ISO 3166-1, as "PT"':
    "ein Land sind zwei Großbuchstaben nach ISO 3166-1, wie „PT“",
};

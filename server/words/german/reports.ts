import type { Sentences } from "#server/words/translator.ts";

/** What server/reports, engine/orders and engine/demand say. */
export const REPORTS: Sentences = {
  'No drink with a spec is named "{0}".': "Kein Drink mit Rezept heißt „{0}“.",
  "A variance lies between two counts; the book has {0}. Count once more and ask again.":
    "Eine Abweichung liegt zwischen zwei Zählungen; im Buch: {0}. Zähle noch einmal und frag dann wieder.",
  'Before "{0}" only a few items were counted, too few to compare with. Name a count to start from, or count once more.':
    "Vor „{0}“ wurden nur wenige Artikel gezählt, zu wenige zum Vergleichen. Nenne eine Zählung als Anfang oder zähle noch einmal.",
  '"{0}" is the first count; there is none before it to compare with.':
    "„{0}“ ist die erste Zählung; davor gibt es keine zum Vergleichen.",
  'The count "{0}" is not before "{1}"; name the earlier one with --since.':
    "Die Zählung „{0}“ liegt nicht vor „{1}“; nenne die frühere zuerst.",
  'No count is named "{0}". The latest are {1}.': "Keine Zählung heißt „{0}“. Die letzten sind {1}.",
  'what: no drink or item is named "{0}".': "Kein Drink und kein Artikel heißt „{0}“.",
  'No prep is named "{0}".': "Keine Zubereitung heißt „{0}“.",
  'There is a "{0}" already; open it, or choose another name.':
    "„{0}“ gibt es schon; öffne es oder wähle einen anderen Namen.",
  'No supplier is named "{0}". The book has {1}.': "Kein Lieferant heißt „{0}“. Im Buch: {1}.",
  "skipped {0}": "ausgelassen: {0}",
  'item: nothing can be reckoned of "{0}"; it is counted, used and bought from nobody known.':
    "Für „{0}“ lässt sich nichts berechnen; es wird nicht gezählt, nicht verbraucht und bei niemand Bekanntem gekauft.",
  "A replay takes four weeks of sales: three to learn from and one to try on. Read in older sales files first.":
    "Um vergangene Wochen neu zu bestellen, braucht es vier Wochen Verkäufe: drei zum Lernen, eine zum Prüfen. Lies zuerst ältere Verkaufsdateien ein.",
  'pars: no item is named "{0}".': "Kein Artikel heißt „{0}“.",
  'No item is named "{0}".': "Kein Artikel heißt „{0}“.",
  'No drink is named "{0}". Write its spec first, then ask again.':
    "Kein Drink heißt „{0}“. Schreib zuerst sein Rezept und frag dann wieder.",
  "Nothing was counted yet.": "Es wurde noch nichts gezählt.",
  "{0} days ago": "vor {0} Tagen",
  "Last counted {0}.": "Zuletzt gezählt: {0}.",
  'Last counted whole {0}; "{1}" holds {2} of {3} items.':
    "Zuletzt ganz gezählt: {0}; „{1}“ umfasst {2} von {3} Artikeln.",
  "No sales file was read yet.": "Es wurde noch keine Verkaufsdatei gelesen.",
  "Sales are in up to {0}.": "Verkäufe sind bis {0} da.",
  "1 day is missing after {0}.": "Nach dem {0} fehlt 1 Tag.",
  "{0} days are missing after {1}.": "Nach dem {1} fehlen {0} Tage.",
  "1 name is sold that no spec knows.": "1 verkaufter Name steht in keinem Rezept.",
  "{0} names are sold that no spec knows.": "{0} verkaufte Namen stehen in keinem Rezept.",
  "1 likely reason to check.": "1 wahrscheinliche Ursache zu prüfen.",
  "{0} likely reasons to check.": "{0} wahrscheinliche Ursachen zu prüfen.",
  "{0} of {1} items stand out.": "{0} von {1} Artikeln fallen auf.",
  "1 supplier to order from.": "Bei 1 Lieferanten zu bestellen.",
  "{0} suppliers to order from.": "Bei {0} Lieferanten zu bestellen.",
  "1 past its date.": "1 abgelaufen.",
  "{0} past their date.": "{0} abgelaufen.",
  "1 batch to make.": "1 Charge herzustellen.",
  "{0} batches to make.": "{0} Chargen herzustellen.",
  "Ring names": "Kassennamen",
  "All that was sold is known.": "Alles Verkaufte ist bekannt.",
  "Sales before the last count are missing. Read them in first.":
    "Vor der letzten Zählung fehlen Verkäufe. Lies sie zuerst ein.",
  "It takes two counts to compare.": "Zum Vergleichen braucht es zwei Zählungen.",
  "All {0} items are within what counting can do.":
    "Alle {0} Artikel liegen innerhalb der Unschärfe des Zählens.",
  "Close the week": "Woche abschließen",
  "Closed up to {0}.": "Abgeschlossen bis {0}.",
  "The week to {0} is explained; closed, it stays as it is.":
    "Die Woche bis {0} ist erklärt; nach dem Abschluss bleibt sie, wie sie ist.",
  "Nothing is needed before the next cut-offs.": "Vor den nächsten Bestellschlüssen wird nichts gebraucht.",
  "Nothing to make.": "Nichts herzustellen.",
  '"{0}" has no pack "{1}".': "„{0}“ hat kein Gebinde „{1}“.",
  "{0} chance to run out before it can arrive": "zu {0} geht es aus, bevor sie ankommen kann",
  "{0} on hand will be past its date before it is used":
    "{0} vom Bestand laufen ab, bevor sie verbraucht sind",
  "up to the par set by hand": "bis zum von Hand gesetzten Sollbestand",
  "does not last the first day without it": "reicht ohne sie nicht für den ersten Tag",
  "lasts past {0} on the average, but not surely": "reicht im Mittel über {0} hinaus, aber nicht sicher",
  "the next delivery": "die nächste Lieferung",
  "lasts until {0} without it": "reicht ohne sie bis {0}",
  "{0} trading days": "{0} Tage mit Betrieb",
  "{0}, for it keeps 1 day": "{0}, denn es hält 1 Tag",
  "{0}, for it keeps {1} days": "{0}, denn es hält {1} Tage",
  "set by hand; computed {0}: {1}": "von Hand gesetzt; berechnet {0}: {1}",
  "set by hand ({0}); computed {1}: {2}": "von Hand gesetzt ({0}); berechnet {1}: {2}",
  "{0}, {1} sure: {2} on the average and {3} to be safe":
    "{0}, zu {1} sicher: {2} im Mittel und {3} als Reserve",
  "leave a share to the other drinks": "überlass den anderen Drinks einen Anteil",
  "New menu": "Neue Karte",
  "A level lies between 0 and 1, not at {0}.": "Ein Niveau liegt zwischen 0 und 1, nicht bei {0}.",
  "weekend holiday": "Feiertag am Wochenende",
};

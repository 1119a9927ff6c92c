import type { Sentences } from "#server/words/translator.ts";

/** What engine/variance says. */
export const VARIANCE: Sentences = {
  "Everything was counted and sold whole: there is no uncertainty to speak of.":
    "Alles wurde ganz gezählt und verkauft: Es gibt keine nennenswerte Unsicherheit.",
  "The largest part": "Der größte Teil",
  "how exactly the opening count could be read": "wie genau die Anfangszählung abzulesen war",
  "how exactly the closing count could be read": "wie genau die Endzählung abzulesen war",
  "the spread of single pours": "die Streuung der einzelnen Portionen",
  "the spread of what batches yield": "die Streuung der Ausbeute von Chargen",
  "the estimate of top-ups": "die Schätzung des Auffüllens",
  "{0} of the {1} is {2} ({3} %).": "{0} von {1} ist {2} ({3} %).",
  "found by the variance": "durch die Abweichung gefunden",
  "Enters a batch of {0} of {1}.": "Eintrag einer Charge {1} von {0}.",
  "Look at the labels and the prep board for a batch of {0} that is on no batch sheet; its inputs are gone too.":
    "Sieh auf Etiketten und Vorbereitungstafel nach einer Charge {0}, die auf keinem Chargenblatt steht; auch ihre Zutaten fehlen.",
  "Enters {0} of {1} as thrown out.": "Eintrag von {0} {1} als weggeworfen.",
  "Look at the use-by dates of {0} in these days and ask for the waste sheet: a batch may have been thrown out without a note.":
    "Sieh dir an, bis wann {0} in diesen Tagen zu verbrauchen war, und lass dir das Abfallblatt geben: Vielleicht wurde eine Charge ohne Eintrag weggeworfen.",
  "Enters {0} of {1} as broken.": "Eintrag von {0} {1} als zerbrochen.",
  "Look at the breakage sheet and the glass bin for {0} of {1}, and count it again first.":
    "Sieh im Bruchblatt und im Glascontainer nach {0} {1}, und zähle vorher noch einmal.",
  "Takes one of the two entries of {0} back: {1} × {2} of {3}.":
    "Rücknahme eines der beiden Einträge ({0}): {1} × {2} {3}.",
  "Compare the entries of {0} with the paper: {1} may have been entered twice.":
    "Vergleiche die Einträge mit dem Papier ({0}): {1} wurde vielleicht zweimal eingetragen.",
  "the delivery of {0} from {1}": "Lieferung vom {0} von {1}",
  "invoice {0} from {1}": "Rechnung {0} von {1}",
  "Compare {0} with its delivery note: {1} × {2} of {3} may not have been in the drop.":
    "Vergleiche mit dem Lieferschein ({0}): {1} × {2} {3} waren vielleicht nicht dabei.",
  "Takes {0} × {1} of {2} off {3}.": "Abzug von {0} × {1} {2} ({3}).",
  "Count {0} again in every area: count {1} may have taken empty or double-counted containers as full.":
    "Zähle {0} in jedem Bereich noch einmal: In der Zählung {1} wurden vielleicht leere Behälter als volle gezählt oder volle doppelt.",
  "Look behind, below and in the boxes for {0}: count {1} may have missed a full container, or taken a case for a bottle.":
    "Suche {0} dahinter, darunter und in den Kartons: In der Zählung {1} wurde vielleicht ein voller Behälter übersehen oder eine Kiste für eine Flasche gehalten.",
  "Corrects count {0}: {1} instead of {2} full {3} in {4}.":
    "Berichtigung der Zählung {0}: {1} statt {2} volle {3} in {4}.",
  "Corrects count {0}: about {1} of {2} in {3} instead of none. Better: count it again.":
    "Berichtigung der Zählung {0}: etwa {1} {2} in {3} statt nichts. Besser: noch einmal zählen.",
  "Look for {0} in {1}: count {2} says there was none, though other counts found some there.":
    "Suche {0} in {1}: Nach der Zählung {2} war dort nichts, obwohl andere Zählungen dort etwas gefunden haben.",
  "{0} on order {1}": "{0} zur Bestellung {1}",
  "Enters {0} × {1} of {2} as delivered by {3}.": "Eintrag von {0} × {1} {2} als Lieferung von {3}.",
  "Look for the delivery note of {0}'s order {1} from {2}: {3} × {4} of {5} may have come without being entered.":
    "Suche den Lieferschein zur Bestellung {1} bei {2} vom {0}: {3} × {4} {5} sind vielleicht gekommen und nicht eingetragen.",
  "the suppliers": "den Lieferanten",
  "Look for a delivery note or invoice from {0} with {1} × {2} of {3}, or for bottles brought in from elsewhere.":
    "Suche einen Lieferschein oder eine Rechnung von {0} mit {1} × {2} {3}, oder Flaschen, die von anderswo kamen.",
  "Measure ten pours of {0} into a jug against the spec, and look at its pourer and jigger.":
    "Miss zehn Portionen {0} in einem Messbecher gegen das Rezept und sieh dir Ausgießer und Messbecher an.",
  "Look whether {0} stands where {1} should, and which of the two the spec card in use names.":
    "Sieh nach, ob {0} steht, wo {1} stehen sollte, und welchen von beiden die benutzte Rezeptkarte nennt.",
  "made but not rung; found by the variance": "gemacht, aber nicht boniert; durch die Abweichung gefunden",
  "Enters {0} serves of {1} as made but not rung.":
    "Eintrag von {0} Portionen {1} als gemacht, aber nicht boniert.",
  "Compare the slips and the comps, tabs and staff drinks of these days with the till for {0}: some may have been made without being rung.":
    "Vergleiche die Bons sowie Freigetränke, offene Rechnungen und Personalgetränke dieser Tage mit der Kasse ({0}): Einige wurden vielleicht gemacht, aber nicht boniert.",
  "Look at the till's buttons for {0} and {1}, and at slips of the busy hours: the one may be rung where the other is made.":
    "Sieh dir die Kassentasten für {0} und {1} und die Bons der vollen Stunden an: Vielleicht wird das eine boniert und das andere gemacht.",
  "Look which spec card of {0} is in use behind the bar: the numbers fit the version from {1}.":
    "Sieh nach, welche Rezeptkarte von {0} hinter der Bar benutzt wird: Die Zahlen passen zur Fassung vom {1}.",
  "Read the spec of {0}: it says {1} {2} of {3}; the numbers fit {4} {5}.":
    "Lies das Rezept von {0}: Dort stehen {1} {2} {3}; die Zahlen passen zu {4} {5}.",
  'Maps the ring name "{0}" to {1}.': "Zuordnung des Kassennamens „{0}“: {1}.",
  'Map the ring name "{0}" ({1} sold): the numbers fit {2}. Then look at this report again.':
    "Ordne den Kassennamen „{0}“ zu ({1} verkauft): Die Zahlen passen zu {2}. Sieh dir diesen Bericht dann noch einmal an.",
  "Corrects invoice {0} from {1}: {2} came {3}.": "Berichtigung der Rechnung {0} von {1}: {2} kam {3}.",
  "Look at invoice {0} from {1}: {2} is entered as {3} by the {4}; it may have come {5}.":
    "Sieh dir die Rechnung {0} von {1} an: {2} ist als {3} je {4} eingetragen; vielleicht kam es {5}.",
  "as {0}": "als {0}",
  "by the {0}": "je {0}",
  "Press or cut ten pieces of {0} and measure what they give against the book's yield; the season or the size may have changed{1}.":
    "Presse oder schneide zehn Stück {0} und miss, was sie geben, gegen die Ausbeute im Buch; Saison oder Größe haben sich vielleicht geändert{1}.",
  ", for the better": ", zum Besseren",
  "λ must lie in (0, 1]; it is {0}.": "λ muss in (0, 1] liegen; es ist {0}.",
  "{0} rows, {1} values and {2} columns make no fit.":
    "{0} Zeilen, {1} Werte und {2} Spalten ergeben keine Anpassung.",
  "A variance is no accusation: it says that the numbers do not meet, not who or what made them differ. Check the counts, invoices and specs first.":
    "Eine Abweichung ist keine Beschuldigung: Sie sagt, dass die Zahlen nicht zusammenpassen, nicht, wer oder was sie auseinanderbrachte. Prüfe zuerst Zählungen, Rechnungen und Rezepte.",
  "Stands out, and no cause explains it.": "Fällt auf, und keine Ursache erklärt es.",
  "Counting it again tells a wrong count from stock that is gone.":
    "Eine Nachzählung unterscheidet eine falsche Zählung von Bestand, der fehlt.",
  "A short count tells what goes on from what is over.":
    "Eine kurze Zählung unterscheidet, was weitergeht, von dem, was vorbei ist.",
  "no area": "kein Bereich",
};

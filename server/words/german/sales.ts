import type { Sentences } from "#server/words/translator.ts";

/** What is said of till files and ring names. */
export const SALES: Sentences = {
  "its words are shortened{0}": "seine Wörter sind gekürzt{0}",
  "one is the plural of the other{0}": "eines ist die Mehrzahl des anderen{0}",
  "a letter or two differ{0}": "ein, zwei Buchstaben sind anders{0}",
  "some of its words are alike": "einige Wörter sind gleich",
  "a size of it: say how many serves": "eine Größe davon: sag, wie viele Portionen",
  "the same name, {0} serves of it": "derselbe Name, {0} Portionen davon",
  "the same name at another price": "derselbe Name zu anderem Preis",
  "the same name, written otherwise": "derselbe Name, anders geschrieben",
  ", of a size: say how many serves": ", einer Größe: sag, wie viele Portionen",
  ", {0} serves of it": ", {0} Portionen davon",
  ", at another price": ", zu anderem Preis",
  'A bill names "{0}", which the catalogue has not.': "Eine Stückliste nennt „{0}“, das es nicht gibt.",
  "a quotation mark is never closed; close it": "ein Anführungszeichen wird nie geschlossen; schließe es",
  "the row has {0} cells, not {1}; quote cells that hold a comma":
    "die Zeile hat {0} Zellen statt {1}; setze Zellen mit Komma in Anführungszeichen",
  'business_date: "{0}" is no date; write YYYY-MM-DD':
    "business_date: „{0}“ ist kein Datum; schreib JJJJ-MM-TT",
  'sold_at: "{0}" is no instant; write YYYY-MM-DDTHH:MM:SSZ':
    "sold_at: „{0}“ ist kein Zeitpunkt; schreib YYYY-MM-DDTHH:MM:SSZ",
  "ring_name: nothing there; write what was sold": "ring_name: nichts da; schreib, was verkauft wurde",
  'quantity: "{0}" is no number; write it as in 2 or -1.5':
    "quantity: „{0}“ ist keine Zahl; schreib sie wie 2 oder -1.5",
  'gross: "{0}" is no amount of money; write it as in 12.50':
    "gross: „{0}“ ist kein Geldbetrag; schreib ihn wie 12.50",
  'net: "{0}" is no amount of money; write it as in 12.50':
    "net: „{0}“ ist kein Geldbetrag; schreib ihn wie 12.50",
  '{0}: "{1}" looks like a modifier, but no line of its check stands above it; mend the row or leave it out':
    "{0}: „{1}“ sieht nach einem Zusatz aus, aber darüber steht keine Zeile seines Bons; berichtige die Zeile oder lass sie weg",
  '{0}: no line "{1}" above; mend the row or leave it out':
    "{0}: darüber steht keine Zeile „{1}“; berichtige die Zeile oder lass sie weg",
  'the row looks like a modifier of "{0}" but has another quantity ({1}); name a parent or kind column, or mend the row':
    "die Zeile sieht nach einem Zusatz zu „{0}“ aus, hat aber eine andere Menge ({1}); nenne eine Spalte für Hauptzeile oder Art, oder berichtige die Zeile",
  'dayEnds "{0}" is no time of day; write HH:MM, as in "04:00".':
    "dayEnds „{0}“ ist keine Uhrzeit; schreib HH:MM, wie „04:00“.",
  "day {0} lies outside the calendar.": "Tag {0} liegt außerhalb des Kalenders.",
  '"{0}" is no local time; write YYYY-MM-DD HH:MM.': "„{0}“ ist keine Ortszeit; schreib JJJJ-MM-TT HH:MM.",
  '"{0}" is no instant; write YYYY-MM-DDTHH:MM:SSZ.':
    "„{0}“ ist kein Zeitpunkt; schreib YYYY-MM-DDTHH:MM:SSZ.",
  '"{0}" is no known time zone; use an IANA name such as "Europe/Berlin".':
    "„{0}“ ist keine bekannte Zeitzone; nimm einen IANA-Namen wie „Europe/Berlin“.",
  'which column is the {0}: "{1}" (column {2}) or "{3}" (column {4})? Name it in sales-shapes.json, by its heading or as "#{5}" or "#{6}".':
    "Welche Spalte ist {0}: „{1}“ (Spalte {2}) oder „{3}“ (Spalte {4})? Nenne sie in sales-shapes.json, nach ihrer Überschrift oder als „#{5}“ oder „#{6}“.",
  'which column holds the name of what was sold? The columns are {0}. Name it as "item" under columns in sales-shapes.json.':
    "In welcher Spalte steht, was verkauft wurde? Die Spalten sind {0}. Nenne sie als „item“ unter columns in sales-shapes.json.",
  "the file is larger than {0} MB, and its rows can only be understood together; split it by month.":
    "die Datei ist größer als {0} MB, und ihre Zeilen sind nur zusammen zu verstehen; teile sie nach Monaten.",
  "this file is packed ({0}); unpack it and import the CSV that is in it.":
    "diese Datei ist gepackt ({0}); entpacke sie und lies die CSV darin ein.",
  "this is a spreadsheet workbook or a zip file; save the sheet as CSV, or unpack it, and import that.":
    "das ist eine Tabellenmappe oder ein Zip; speichere das Blatt als CSV, oder entpacke es, und lies das ein.",
  "this is a PDF; export the sales from the till as CSV and import that.":
    "das ist ein PDF; exportiere die Verkäufe aus der Kasse als CSV und lies die ein.",
  "this is no text file; export the sales from the till as CSV and import that.":
    "das ist keine Textdatei; exportiere die Verkäufe aus der Kasse als CSV und lies die ein.",
  "line {0} is {1} characters long, which no till writes; check that the export is complete.":
    "Zeile {0} ist {1} Zeichen lang, was keine Kasse schreibt; prüfe, ob der Export vollständig ist.",
  "the file has more than {0} lines; split it by month.":
    "die Datei hat mehr als {0} Zeilen; teile sie nach Monaten.",
  "{0}: nothing there; write how many were sold": "{0}: nichts da; schreib, wie viele verkauft wurden",
  '{0}: "{1}" is no quantity; write a number, as in 2':
    "{0}: „{1}“ ist keine Anzahl; schreib eine Zahl, wie 2",
  "the shape names the headings {0}, and no row of the file has any of them. Is it the right shape?":
    "die Form nennt die Überschriften {0}, und keine Zeile der Datei hat eine davon. Ist es die richtige Form?",
  'which row holds the headings? None of the first rows names columns such as date, item and quantity. Add a row of headings, or name the columns by number ("#1", "#2", …) in sales-shapes.json.':
    "In welcher Zeile stehen die Überschriften? Keine der ersten Zeilen nennt Spalten wie Datum, Artikel und Anzahl. Füge eine Zeile mit Überschriften ein, oder nenne die Spalten mit Nummer („#1“, „#2“, …) in sales-shapes.json.",
  'how are the dates in the column "{0}" written? "{1}" cannot be read as one. Export them as YYYY-MM-DD, or name the column of dates in sales-shapes.json.':
    "Wie sind die Daten in der Spalte „{0}“ geschrieben? „{1}“ ist keines. Exportiere sie als JJJJ-MM-TT, oder nenne die Datumsspalte in sales-shapes.json.",
  "which column holds the quantity sold? No heading names one, and a file without dates is a sum. Name it as quantity in sales-shapes.json.":
    "In welcher Spalte steht die verkaufte Anzahl? Keine Überschrift nennt sie, und eine Datei ohne Daten ist eine Summe. Nenne sie als quantity in sales-shapes.json.",
  'does the column "{0}" hold the quantity sold? Name the quantity column in sales-shapes.json ("" as quantity says that each row is one sale).':
    "Steht in der Spalte „{0}“ die verkaufte Anzahl? Nenne die Spalte der Anzahl in sales-shapes.json („“ als quantity heißt, dass jede Zeile ein Verkauf ist).",
  'is the column "{0}" money, or how many were sold? Name it as gross or as quantity in sales-shapes.json.':
    "Ist die Spalte „{0}“ Geld oder die verkaufte Anzahl? Nenne sie als gross oder quantity in sales-shapes.json.",
  'is each row one sale? There is no quantity column, and no time or check either. Name the quantity column in sales-shapes.json ("" as quantity says that each row is one sale).':
    "Ist jede Zeile ein Verkauf? Es gibt keine Spalte der Anzahl und auch keine Uhrzeit oder Bonnummer. Nenne die Spalte der Anzahl in sales-shapes.json („“ als quantity heißt, dass jede Zeile ein Verkauf ist).",
  '{0}: "{1}" is no amount of money; write it as in 12{2}50':
    "{0}: „{1}“ ist kein Geldbetrag; schreib ihn wie 12{2}50",
  'no date beside the time "{0}"; write one': "kein Datum neben der Uhrzeit „{0}“; schreib eines",
  "date or time": "Datum oder Uhrzeit",
  '{0}: "{1}" is no {2}; write YYYY-MM-DD HH:MM':
    "{0}: „{1}“ ist nicht lesbar als {2}; schreib JJJJ-MM-TT HH:MM",
  'day first ("dmy")': "mit dem Tag zuerst („dmy“)",
  'month first ("mdy")': "mit dem Monat zuerst („mdy“)",
  'year first ("ymd")': "mit dem Jahr zuerst („ymd“)",
  'are the dates of the column "{0}" written {1}? "{2}" could be either; answer as dateOrder in sales-shapes.json.':
    "Sind die Daten der Spalte „{0}“ so geschrieben: {1}? „{2}“ kann beides sein; antworte als dateOrder in sales-shapes.json.",
  'the column "{0}" has dates with the day first and dates with the month first{1}: which one is it? Export the file again with one form of date, or state dateOrder in sales-shapes.json.':
    "die Spalte „{0}“ hat Daten mit dem Tag zuerst und Daten mit dem Monat zuerst{1}: Was gilt? Exportiere die Datei mit einer Datumsform, oder gib dateOrder in sales-shapes.json an.",
  'the column "{0}" has "{1}" and "{2}": is its decimal mark "." or ","? State decimal in sales-shapes.json, or export the file again.':
    "die Spalte „{0}“ hat „{1}“ und „{2}“: Ist ihr Dezimalzeichen „.“ oder „,“? Gib decimal in sales-shapes.json an, oder exportiere die Datei noch einmal.",
  'is "{0}" in the column "{1}" a number of thousands, or one with three decimals? State decimal ("." or ",") in sales-shapes.json.':
    "Ist „{0}“ in der Spalte „{1}“ eine Zahl mit Tausendern oder mit drei Nachkommastellen? Gib decimal („.“ oder „,“) in sales-shapes.json an.",
  "the row has {0} cells where the headings have {1}; put names and amounts that hold the delimiter in quotation marks":
    "die Zeile hat {0} Zellen, die Überschriften {1}; setze Namen und Beträge mit dem Trennzeichen in Anführungszeichen",
  "not a sale": "kein Verkauf",
  "write what was sold": "schreib, was verkauft wurde",
  "write the date of the sale": "schreib das Datum des Verkaufs",
  "{0}: nothing there; {1}": "{0}: nichts da; {1}",
  "the file is empty; export the sales again.": "die Datei ist leer; exportiere die Verkäufe noch einmal.",
  'what stands between the columns? The rows cannot be cut at commas, semicolons, tabs or "|"; state delimiter in sales-shapes.json.':
    "Was steht zwischen den Spalten? Die Zeilen lassen sich nicht an Komma, Semikolon, Tabulator oder „|“ trennen; gib delimiter in sales-shapes.json an.",
  "The columns of persons ({0}) were not read.": "Die Spalten mit Personen ({0}) wurden nicht gelesen.",
  '{0}: "{1}" ({2} rows) is no known word for a void or refund; those rows were read as sales.':
    "{0}: „{1}“ ({2} Zeilen) ist kein bekanntes Wort für Storno oder Erstattung; diese Zeilen wurden als Verkäufe gelesen.",
  '"{0}" was not read; the quantity was taken as it stands in "{1}".':
    "„{0}“ wurde nicht gelesen; die Anzahl gilt, wie sie in „{1}“ steht.",
  "the rows": "die Zeilen",
  "{0} rows say that they are payments, tips, taxes or discounts and were passed over.":
    "{0} Zeilen sind nach eigener Angabe Zahlungen, Trinkgelder, Steuern oder Rabatte und wurden übergangen.",
  "Every time is midnight, so the dates were read as dates without a time.":
    "Jede Uhrzeit ist Mitternacht, also wurden die Daten ohne Uhrzeit gelesen.",
  "{0} stays on the evening before past midnight, so it was read as the business date.":
    "{0} bleibt nach Mitternacht beim Abend davor, also wurde es als Geschäftstag gelesen.",
  'row {0} opens a quotation mark that is never closed; close it (or write "" for a mark inside a name).':
    'Zeile {0} öffnet ein Anführungszeichen, das nie geschlossen wird; schließe es (oder schreib "" für eines im Namen).',
  "the file has more than {0} cells; split it by month.":
    "die Datei hat mehr als {0} Zellen; teile sie nach Monaten.",
  'write one character, or "tab"': "schreib ein Zeichen, oder „tab“",
  'the shape says that {0} is in the column "{1}", which the file does not have; it has {2}. Which one is it?':
    "nach der Form steht {0} in der Spalte „{1}“, die die Datei nicht hat; sie hat {2}. Welche ist es?",
  'is the day or the month first in the headings "{0}"? Answer as dateOrder ("dmy" or "mdy") in sales-shapes.json.':
    "Steht in den Überschriften „{0}“ der Tag oder der Monat zuerst? Antworte als dateOrder („dmy“ oder „mdy“) in sales-shapes.json.",
  'are the numbers under the days, such as "{0}", pieces sold or money? Where they are pieces, state decimal ("." or ",") in sales-shapes.json; where they are money, export the quantities.':
    "Sind die Zahlen unter den Tagen, wie „{0}“, verkaufte Stücke oder Geld? Bei Stücken gib decimal („.“ oder „,“) in sales-shapes.json an; bei Geld exportiere die Anzahlen.",
  "{0}: no such day; write the heading as YYYY-MM-DD":
    "{0}: diesen Tag gibt es nicht; schreib die Überschrift als JJJJ-MM-TT",
  "{0}: nothing there; write what was sold": "{0}: nichts da; schreib, was verkauft wurde",
  'is the day or the month first in the date above the headings? Answer as dateOrder ("dmy" or "mdy") in sales-shapes.json.':
    "Steht im Datum über den Überschriften der Tag oder der Monat zuerst? Antworte als dateOrder („dmy“ oder „mdy“) in sales-shapes.json.",
  "the lines above the headings name {0} days, and the rows name none: which day are these sales of? Export one day a file, or with a date in each row.":
    "die Zeilen über den Überschriften nennen {0} Tage, und die Zeilen keinen: Von welchem Tag sind diese Verkäufe? Exportiere einen Tag je Datei, oder mit Datum in jeder Zeile.",
  "no column holds a date, and no line above the headings names the day: which day are these sales of? Export with a date, or state day (YYYY-MM-DD) for this file in sales-shapes.json.":
    "keine Spalte hat ein Datum, und keine Zeile über den Überschriften nennt den Tag: Von welchem Tag sind diese Verkäufe? Exportiere mit Datum, oder gib day (JJJJ-MM-TT) für diese Datei in sales-shapes.json an.",
  "gift card": "Gutschein",
};

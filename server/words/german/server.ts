import type { Sentences } from "#server/words/translator.ts";

/** What is said of writing, history, people, backups and the doors. */
export const SERVER: Sentences = {
  "{0} has {1} rows, and had {2} when it was backed up": "{0} hat {1} Zeilen und hatte {2} bei der Sicherung",
  "its history ends at act {0}, and ended at act {1} otherwise":
    "ihr Verlauf endet bei Vorgang {0} und endete sonst bei Vorgang {1}",
  "{0} is there already; name a new file for the backup.":
    "{0} gibt es schon; nenne eine neue Datei für die Sicherung.",
  "{0}: there is no such file.": "{0}: Diese Datei gibt es nicht.",
  "{0} row {1} points at a {2} that is not there": "{0} Zeile {1} verweist auf ein {2}, das es nicht gibt",
  "{0} is damaged: {1}. Nothing was changed; name another backup.":
    "{0} ist beschädigt: {1}. Nichts wurde geändert; nenne eine andere Sicherung.",
  "{0} is in use by another program, such as ullage serve. Nothing was changed; stop that program first.":
    "{0} wird von einem anderen Programm benutzt, etwa ullage serve. Nichts wurde geändert; beende zuerst dieses Programm.",
  "Say why the par is set by hand, for whoever wonders in three months.":
    "Sag, warum der Sollbestand von Hand gesetzt ist, für alle, die sich in drei Monaten fragen, warum.",
  'There is no item "{0}".': "Einen Artikel „{0}“ gibt es nicht.",
  "A full container cannot weigh {0} g and an empty one {1} g; weigh both again.":
    "Ein voller Behälter kann nicht {0} g und ein leerer {1} g wiegen; wiege beide noch einmal.",
  'There is no such row of the pack "{0}" of "{1}".':
    "Eine solche Zeile des Gebindes „{0}“ von „{1}“ gibt es nicht.",
  "A closure ends on {0}, before it begins on {1}.":
    "Eine Schließzeit endet am {0}, bevor sie am {1} beginnt.",
  '"{0}" is still named elsewhere in the book; take it out there first.':
    "„{0}“ steht noch an anderer Stelle im Buch; nimm es zuerst dort heraus.",
  '"{0}" is no date; write it as 2026-11-22.': "„{0}“ ist kein Datum; schreib es wie 2026-11-22.",
  "The past is closed up to {0} already.": "Die Vergangenheit ist schon bis {0} abgeschlossen.",
  "The past is closed up to {0}": "Die Vergangenheit ist bis {0} abgeschlossen",
  "The past is closed up to {0}, with the count {1}":
    "Die Vergangenheit ist bis {0} abgeschlossen, mit der Zählung {1}",
  "{0} is not over yet (the venue's day is {1}); close it up to {2} at most.":
    "{0} ist noch nicht vorbei (der Tag der Bar ist {1}); schließe höchstens bis {2} ab.",
  "Only the owner may reopen a closed week.": "Nur der Inhaber darf eine abgeschlossene Woche wieder öffnen.",
  "Say why the week is reopened; it stays in the history.":
    "Sag, warum die Woche wieder geöffnet wird; es bleibt im Verlauf.",
  "Nothing is closed, so there is nothing to reopen.":
    "Nichts ist abgeschlossen, also gibt es nichts wieder zu öffnen.",
  "The past is closed up to {0}; name an earlier day to reopen what follows it.":
    "Die Vergangenheit ist bis {0} abgeschlossen; nenne einen früheren Tag, um zu öffnen, was danach kommt.",
  "nothing is closed now": "jetzt ist nichts abgeschlossen",
  "closed up to {0} now": "jetzt abgeschlossen bis {0}",
  "The week to {0} is open again; {1}": "Die Woche bis {0} ist wieder offen; {1}",
  "No device has the number {0}.": "Kein Gerät hat die Nummer {0}.",
  "The history has no act {0}.": "Im Verlauf gibt es keinen Vorgang {0}.",
  "Act {0} is about nothing.": "Vorgang {0} betrifft nichts.",
  "This was undone already (no. {0}).": "Das wurde schon zurückgenommen (Nr. {0}).",
  "This cannot be undone here. {0}": "Das lässt sich hier nicht zurücknehmen. {0}",
  "The whole book was loaded since, so this cannot be undone; bring back the copy that was kept.":
    "Seither wurde das ganze Buch geladen, also lässt sich das nicht zurücknehmen; hol die aufbewahrte Kopie zurück.",
  "Bring back the copy that was kept with: ullage restore FILE":
    "Hol die aufbewahrte Kopie zurück mit: ullage restore FILE",
  "The owner can reopen the week, with a reason.":
    "Der Inhaber kann die Woche mit einem Grund wieder öffnen.",
  "Close the week again.": "Schließe die Woche wieder ab.",
  "Take it back on the variance screen.": "Nimm es auf der Seite „Abweichung“ zurück.",
  "Done again: ": "Wieder getan: ",
  "Somebody without a name acts; name the person or the token.":
    "Jemand ohne Namen handelt; nenne die Person oder das Token.",
  "this machine": "dieser Rechner",
  "user {0}": "Benutzer {0}",
  'spec of "{0}"': "Rezept von „{0}“",
  'yield of "{0}"': "Ausbeute von „{0}“",
  'ring name "{0}", which was sold in the closed weeks':
    "Kassenname „{0}“, der in den abgeschlossenen Wochen verkauft wurde",
  'modifier "{0}", which was rung in the closed weeks':
    "Zusatz „{0}“, der in den abgeschlossenen Wochen boniert wurde",
  "how the venue measures": "wie die Bar misst",
  "it is missing": "er fehlt",
  "it does not follow from the act before it": "er folgt nicht aus dem Vorgang davor",
  "it was changed after it was written": "er wurde geändert, nachdem er geschrieben war",
  "the history is broken at act {0}: {1}": "der Verlauf ist bei Vorgang {0} gebrochen: {1}",
  "sales shape": "Form der Verkaufsdatei",
  "order day": "Bestelltag",
  "closed from": "geschlossen ab",
  "shelf place of": "Regalplatz von",
  "yield of": "Ausbeute von",
  "ring name": "Kassenname",
  "names of staff": "Namen des Personals",
  "plan for": "Plan für",
  "order line": "Bestellzeile",
  "written again, nothing in it changed": "neu geschrieben, nichts darin geändert",
  "; and {0} more changes": "; und {0} weitere Änderungen",
  "added {0}": "hinzugefügt: {0}",
  "taken out {0}": "herausgenommen: {0}",
  "{0} in {1}: {2}": "{0} in {1}: {2}",
  "{0} × case of {1}": "{0} × Kiste mit {1}",
  "{0} {1} from {2}": "{0} {1} von {2}",
  "open {0}": "offen {0}",
  "{0} moved here from {1}": "{0} hierher von {1}",
  "{0} moved away to {1}": "{0} nach {1}",
  "on the scale {0}": "auf der Waage {0}",
  "It was changed since, by more than can be undone at once.":
    "Es wurde seither mehr geändert, als sich auf einmal zurücknehmen lässt.",
  "It was changed since: {0} by {1} (no. {2}, {3}).":
    "Es wurde seither geändert: {0} durch {1} (Nr. {2}, {3}).",
  "a whole book in place of this one": "ein ganzes Buch anstelle von diesem",
  "A {0} is about nothing.": "Ein {0} betrifft nichts.",
  "{0}, dated {1}": "{0}, am {1}",
  "{0} of {1}": "{0} {1}",
  "There is nothing to undo in it: it added nothing.":
    "Daran ist nichts zurückzunehmen: Es hat nichts hinzugefügt.",
  "The entry was corrected or taken back later; undo that first.":
    "Der Eintrag wurde später berichtigt oder zurückgenommen; nimm zuerst das zurück.",
  "The entry is no longer there: the book was loaded anew.":
    "Den Eintrag gibt es nicht mehr: Das Buch wurde neu geladen.",
  "A settled cause of the variance made this entry; take that back on the variance screen instead.":
    "Eine geklärte Ursache der Abweichung hat diesen Eintrag gemacht; nimm stattdessen die Klärung auf der Seite „Abweichung“ zurück.",
  "{0} Undo that first.": "{0} Nimm zuerst das zurück.",
  "There is nothing to undo in it: it changed nothing.":
    "Daran ist nichts zurückzunehmen: Es hat nichts geändert.",
  "Something entered later still names it (an entry that was taken back keeps its names too), so it stays.":
    "Ein späterer Eintrag nennt es noch (auch ein zurückgenommener behält seine Namen), also bleibt es.",
  'The history names a table "{0}" that cannot be changed.':
    "Der Verlauf nennt eine Tabelle „{0}“, die sich nicht ändern lässt.",
  "sales of {0}": "Verkäufe vom {0}",
  'There is a "{0}" already; open it to write a new version, or choose another name.':
    "„{0}“ gibt es schon; öffne es, um eine neue Fassung zu schreiben, oder wähle einen anderen Namen.",
  "Write what goes in, or what it is cut or pressed from.":
    "Schreib, was hineinkommt, oder woraus es geschnitten oder gepresst wird.",
  'The yield and the cut must be of "{0}" itself.': "Ausbeute und Schnitt müssen zu „{0}“ selbst gehören.",
  'The line of "{0}" needs an amount in a prep.': "Die Zeile „{0}“ braucht in einer Zubereitung eine Menge.",
  "{0} is no folder and cannot be made one; see that its place may be written to, or name another file than {1}.":
    "{0} ist kein Ordner und kann keiner werden; sieh zu, dass dort geschrieben werden darf, oder nenne eine andere Datei als {1}.",
  "{0} is no database; name another file.": "{0} ist keine Datenbank; nenne eine andere Datei.",
  "{0} cannot be opened as a database: {1}.": "{0} lässt sich nicht als Datenbank öffnen: {1}.",
  "{0} holds no migrations.": "{0} enthält keine Migrationen.",
  "{0} was written by a newer version of ullage; update the program to open it.":
    "{0} wurde von einer neueren Fassung von ullage geschrieben; aktualisiere das Programm, um es zu öffnen.",
  "Bringing {0} up to date left {1} rows pointing at nothing; the copy beside it is as it was.":
    "Beim Aktualisieren von {0} blieben {1} Zeilen ohne Ziel; die Kopie daneben ist, wie sie war.",
  "No migrations in {0}; install the program anew.":
    "Keine Migrationen in {0}; installiere das Programm neu.",
  "{0} is a database, but not one of ullage; name another file.":
    "{0} ist eine Datenbank, aber keine von ullage; nenne eine andere Datei.",
  "An order needs at least one line.": "Eine Bestellung braucht mindestens eine Zeile.",
  "The lines of an order have one name and one supplier; place one order for each.":
    "Die Zeilen einer Bestellung haben einen Namen und einen Lieferanten; gib für jeden eine eigene auf.",
  'There is already an order "{0}"; it was placed before.':
    "Eine Bestellung „{0}“ gibt es schon; sie wurde früher aufgegeben.",
  'There is no order "{0}".': "Eine Bestellung „{0}“ gibt es nicht.",
  'There is no event "{0}" on {1}.': "Ein Ereignis „{0}“ am {1} gibt es nicht.",
  "{0} is the last owner. Make somebody else an owner first.":
    "{0} ist der letzte Inhaber. Mach zuerst jemand anderen zum Inhaber.",
  "the first owner": "der erste Inhaber",
  "one-time link made": "Einmal-Link erstellt",
  "{0} by one-time link": "{0} durch Einmal-Link",
  "This link was used already, is too old or was replaced. Ask the owner for a new one, or make one where the server runs: ullage people link NAME.":
    "Dieser Link wurde schon benutzt, ist zu alt oder wurde ersetzt. Bitte den Inhaber um einen neuen, oder mach einen, wo der Server läuft: ullage people link NAME.",
  "Somebody is named {0} already; names tell who entered what.":
    "Es gibt schon jemanden namens {0}. Nimm einen anderen Namen; an ihm sieht man, wer was eingetragen hat.",
  "Nobody has the number {0}.": "Niemand hat die Nummer {0}.",
  "password set": "Passwort gesetzt",
  'There is an item "{0}" already: choose it for its line, or another name.':
    "Einen Artikel „{0}“ gibt es schon: wähle ihn für seine Zeile, oder einen anderen Namen.",
  'Nothing was said of the ring name "{0}".': "Zum Kassennamen „{0}“ wurde nichts gesagt.",
  "names of staff are kept with sales from now on":
    "Namen von Mitarbeitern werden ab jetzt bei den Verkäufen behalten",
  "names of staff are read no longer": "Namen von Mitarbeitern werden nicht mehr gelesen",
  "names of staff erased: {0}; business days: {1}":
    "gelöschte Namen von Mitarbeitern: {0}; Geschäftstage: {1}",
  "{0}: {1} lines, {2} of them new, {3}": "{0}: {1} Zeilen, davon {2} neu, {3}",
  "There is no import {0}.": "Ein Einlesen {0} gibt es nicht.",
  "variance confirmed: {0}": "Abweichung bestätigt: {0}",
  "Nothing was settled under the number {0}.": "Unter der Nummer {0} wurde nichts geklärt.",
  "This was already taken back.": "Das wurde schon zurückgenommen.",
  "{0}, {1}, between {2} and {3}": "{0}, {1}, zwischen {2} und {3}",
  'The line of "{0}" {1}.': "Die Zeile „{0}“ {1}.",
  "needs an amount": "braucht eine Menge",
  "is topped up, so it has no amount": "wird aufgefüllt, also hat sie keine Menge",
  '"{0}" has no version from {1}.': "„{0}“ hat keine Fassung vom {1}.",
  'The ring name "{0}" has no row.': "Der Kassenname „{0}“ hat keine Zeile.",
  "the database file": "die Datenbankdatei",
  "There is no room left on the disk with {0}. Nothing of this was kept, all before it is. Make room, then do it again.":
    "Auf dem Datenträger mit {0} ist kein Platz mehr. Hiervon wurde nichts behalten, alles davor schon. Schaff Platz und mach es noch einmal.",
  "{0} is in use by another program that does not let go. Nothing of this was kept; try again in a moment, or close that program.":
    "{0} wird von einem anderen Programm festgehalten. Hiervon wurde nichts behalten; versuch es gleich noch einmal oder schließe das Programm.",
  "{0}, or its folder, may only be read by this account. Nothing of this was kept; allow writing to both, then do it again.":
    "{0} oder der Ordner darf von diesem Konto nur gelesen werden. Hiervon wurde nichts behalten; erlaube das Schreiben und mach es noch einmal.",
  "{0} was moved or deleted while it was open. Nothing of this was kept; put it back, or bring back a backup, and start again.":
    "{0} wurde verschoben oder gelöscht, während es offen war. Hiervon wurde nichts behalten; leg es zurück oder hol eine Sicherung, und fang neu an.",
  "{0} is damaged or is no database ({1}). Stop the program and bring back a backup with: ullage restore FILE.":
    "{0} ist beschädigt oder keine Datenbank ({1}). Beende das Programm und hol eine Sicherung zurück mit: ullage restore FILE.",
  "{0} cannot be read or written ({1}). Nothing of this was kept; see that the disk is well and the folder there, then do it again.":
    "{0} lässt sich nicht lesen oder schreiben ({1}). Hiervon wurde nichts behalten; sieh nach Datenträger und Ordner, und mach es noch einmal.",
  "{0} is not known; leave it out.": "{0} ist nicht bekannt; lass es weg.",
  "it is empty; fill it in": "es ist leer; fülle es aus",
  "The entry that this would change was itself changed meanwhile; look at the report again.":
    "Der Eintrag, den das ändern würde, wurde inzwischen selbst geändert; sieh dir den Bericht noch einmal an.",
  "count row": "Zählzeile",
  "counted by someone else meanwhile": "inzwischen von jemand anderem gezählt",
  "counted again": "noch einmal gezählt",
  "This {0} was already corrected or taken back; look at it again.":
    "Dieser Eintrag ({0}) wurde schon berichtigt oder zurückgenommen; sieh ihn dir noch einmal an.",
  "There is no {0} {1}.": "Das gibt es nicht: {0} {1}.",
  "There is no import {0}; list the imports to see their numbers.":
    "Ein Einlesen {0} gibt es nicht; die Liste zeigt ihre Nummern.",
  "Import {0} ({1}) was already undone at {2}.": "Das Einlesen {0} ({1}) wurde schon am {2} zurückgenommen.",
  "no day": "kein Tag",
  "of {0}": "von {0}",
  "{0} days, {1} to {2}": "{0} Tage, {1} bis {2}",
  '"{0}" in "{1}" has a row in "{2}" already; correct that one.':
    "„{0}“ in „{1}“ hat schon eine Zeile in „{2}“; berichtige die.",
  'There is no {0} "{1}"{2}': "Das gibt es nicht: {0} „{1}“{2}",
  "No {0} has the number {1}.": "Diese Nummer gibt es nicht: {0} {1}.",
  'There is no pack "{0}" of "{1}"; it has {2}.': "Ein Gebinde „{0}“ von „{1}“ gibt es nicht; es hat {2}.",
  "No pack has the number {0}.": "Kein Gebinde hat die Nummer {0}.",
  'The {0} "{1}" is there already; choose another name.':
    "Das gibt es schon: {0} „{1}“; wähle einen anderen Namen.",
  '"{0}" is a drink too, and a ring name means the drink; rename one of them.':
    "„{0}“ ist auch ein Drink, und ein Kassenname meint den Drink; benenne eines um.",
  "Import {0} of the same file changed meanwhile; import {1} again.":
    "Das Einlesen {0} derselben Datei hat sich inzwischen geändert; lies {1} noch einmal ein.",
  'There is no drink or prep "{0}".': "Einen Drink oder eine Zubereitung „{0}“ gibt es nicht.",
  "This cannot be kept: {0}.": "Das lässt sich nicht behalten: {0}.",
  '"{0}" is no moment.': "„{0}“ ist kein Zeitpunkt.",
  "A token named {0} works already; revoke it first, or take another name.":
    "Ein Token namens {0} gilt schon; widerrufe es zuerst oder nimm einen anderen Namen.",
  "made, to {0} as {1}": "erstellt, um als {1} zu {0}",
  "No token that works has the name or number {0}.": "Kein gültiges Token hat den Namen oder die Nummer {0}.",
  "There is nothing at {0}.": "Unter {0} gibt es nichts.",
  "The report no longer has this cause: the book was changed meanwhile. Look at it again.":
    "Der Bericht hat diese Ursache nicht mehr: Das Buch wurde inzwischen geändert. Sieh ihn dir noch einmal an.",
  "This machine's clock says {0}Z, but the last act in {1} was at {2}Z. Nothing is lost and all acts keep their order; set the clock right before anything more is entered.":
    "Die Uhr dieses Rechners sagt {0}Z, aber der letzte Vorgang in {1} war um {2}Z. Nichts ist verloren, und alle Vorgänge behalten ihre Reihenfolge; stell die Uhr, bevor mehr eingetragen wird.",
  "Send less at once.": "Sende weniger auf einmal.",
  "Split the list.": "Teile die Liste.",
  "Split the file, or use the command line: ullage sales FILE.":
    "Teile die Datei oder nimm die Befehlszeile: ullage sales FILE.",
  'Bodies packed with "{0}" are not read; send it as it is.':
    "Mit „{0}“ gepackte Inhalte werden nicht gelesen; sende es, wie es ist.",
  "That is more than {0} MB at once, which is the most this takes. {1}":
    "Das sind mehr als {0} MB auf einmal; mehr geht hier nicht. {1}",
  "This server does not answer to that name. Use its address, or start it with --name and the name you use.":
    "Auf diesen Namen antwortet der Server nicht. Nimm seine Adresse, oder starte ihn mit --name und dem Namen, den du benutzt.",
  "{0}: {1} is more than two years after the last entry of the book, {2}; see whether the year is right.":
    "{0}: {1} liegt mehr als zwei Jahre nach dem letzten Eintrag des Buchs, {2}; sieh nach, ob das Jahr stimmt.",
  "at: {0} lies far in the future; the server's clock says {1}. See whether the year is right.":
    "{0} liegt weit in der Zukunft; die Uhr des Servers sagt {1}. Sieh nach, ob das Jahr stimmt.",
  "something was thrown that is no error, of type {0}":
    "etwas wurde geworfen, das kein Fehler ist, vom Typ {0}",
  "caused by ": "verursacht durch ",
  'venue.json, region: a region needs its country beside it, as "country": "DE"; no holidays are known without':
    'venue.json, region: eine Region braucht ihr Land daneben, wie "country": "DE"; ohne sind keine Feiertage bekannt',
  "venue.json, country: no public holidays are known of {0}; enter them as events":
    "venue.json, country: von {0} sind keine Feiertage bekannt; trag sie als Ereignisse ein",
  "it has none": "es hat keine",
  "known are {0}": "bekannt sind {0}",
  'venue.json, region: no public holidays are known of "{0}" in {1} ({2}); those of the whole country are used':
    "venue.json, region: von „{0}“ in {1} ({2}) sind keine Feiertage bekannt; es gelten die des ganzen Landes",
  "The request cannot be read.": "Die Anfrage lässt sich nicht lesen.",
  "Something went wrong in the program. Nothing was changed.":
    "Im Programm ist etwas schiefgegangen. Nichts wurde geändert.",
  "{0}: nothing was sent; send the file as the body.": "{0}: Es kam nichts an; sende die Datei als Inhalt.",
  "{0} is not waiting to be read; choose the file again.":
    "{0} wartet nicht darauf, gelesen zu werden; wähle die Datei noch einmal.",
  "There is no such import under way; the list of imports shows what was read in.":
    "Ein solches Einlesen läuft nicht; die Liste zeigt, was eingelesen wurde.",
  "{0}: that is more than 4 GB; split it by month.": "{0}: Das sind mehr als 4 GB; teile sie nach Monaten.",
  "{0}: the file is empty; export the sales again.":
    "{0}: Die Datei ist leer; exportiere die Verkäufe noch einmal.",
  "{0}: stopped before anything was written.": "{0}: angehalten, bevor etwas geschrieben wurde.",
  "Demo owner": "Inhaber der Demo",
  "The password has {0} characters; take at least {1}. Three words in a row are easy to keep.":
    "Das Passwort hat {0} Zeichen; nimm mindestens {1}. Drei Wörter hintereinander merkt man sich leicht.",
  "The password is longer than {0} characters.": "Das Passwort ist länger als {0} Zeichen.",
  "A password made of your own name is the first one tried. Take another.":
    "Ein Passwort aus dem eigenen Namen wird zuerst versucht. Nimm ein anderes.",
  "That password is among the first ones tried. Take another; three words in a row will do.":
    "Dieses Passwort gehört zu denen, die zuerst versucht werden. Nimm ein anderes; drei Wörter hintereinander genügen.",
  "That PIN is among the first ones tried (a row of keys, a repeat, a year). Take another.":
    "Diese PIN gehört zu denen, die zuerst versucht werden (eine Tastenreihe, eine Wiederholung, ein Jahr). Nimm eine andere.",
  "Sign in to go on.": "Melde dich an, um weiterzumachen.",
  "{0} {1} has no rule saying who may call it.": "Für {0} {1} sagt keine Regel, wer es aufrufen darf.",
  "This takes a person who signed in; no token can do it.":
    "Das braucht eine angemeldete Person; mit einem Token geht es nicht.",
  "The token {0} may only read.": "Das Token {0} darf nur lesen.",
  "{0} is signed in as {1}, and that role may not do this.":
    "{0} ist als {1} angemeldet, und diese Rolle darf das nicht.",
  "This came from another site's page, or from a program without a token; nothing was changed.":
    "Das kam von der Seite einer anderen Website oder von einem Programm ohne Token; nichts wurde geändert.",
  "It is for a server at this machine's usual address; put another's in front of /welcome.\n":
    "Er gilt für einen Server an der üblichen Adresse dieses Rechners; setze sonst eine andere vor /welcome.\n",
  "Open this once, before {0} UTC, and give it to nobody else:\n\n  {1}\n\n{2}":
    "Öffne das einmal, vor {0} UTC, und gib es niemand anderem:\n\n  {1}\n\n{2}",
  "Say your name; it stands beside what you enter.":
    "Sag deinen Namen; er steht neben dem, was du einträgst.",
  "You may correct your own entries of the last day; for others ask the manager.":
    "Du darfst deine eigenen Einträge des letzten Tages berichtigen; für andere frag die Barleitung.",
  "No {0} has the number {1}, or it was replaced.":
    "Diese Nummer gibt es nicht, oder sie wurde ersetzt: {0} {1}.",
  "Too many wrong tries. Wait {0}, then try again.":
    "Zu viele falsche Versuche. Warte {0} und versuch es dann noch einmal.",
  "The name or the password is wrong.": "Der Name oder das Passwort ist falsch.",
  "A PIN counts on the bar's own devices only; the owner or a manager can enrol this one.":
    "Eine PIN gilt nur auf Geräten der Bar; Inhaber oder Barleitung können dieses eintragen.",
  "This PIN was tried wrongly too often and counts no more. Ask the owner for a new link.":
    "Diese PIN wurde zu oft falsch versucht und gilt nicht mehr. Bitte den Inhaber um einen neuen Link.",
  "The {0} you have now is wrong.": "Jetzt falsch eingegeben: {0}.",
  "account {0} {1}": "Konto {0} {1}",
  "address {0}": "Adresse {0}",
  "this process": "dieser Vorgang",
  '{0}: "{1}" is no date; write it as 2026-11-23.': "{0}: „{1}“ ist kein Datum; schreib es wie 2026-11-23.",
  '{0}: "{1}" is no moment; write the venue\'s time as "2026-11-23 10:30".':
    "{0}: „{1}“ ist kein Zeitpunkt; schreib die Zeit der Bar wie „2026-11-23 10:30“.",
  '{0}: "{1}" is no number of days; write a whole number from 1 to 366.':
    "{0}: „{1}“ ist keine Anzahl von Tagen; schreib eine ganze Zahl von 1 bis 366.",
  '{0}: "{1}" is no figure from {2} to {3}.': "{0}: „{1}“ ist keine Zahl von {2} bis {3}.",
  '{0}: "{1}" is no amount of money; write it as 1200 or 1200.50.':
    "{0}: „{1}“ ist kein Geldbetrag; schreib ihn wie 1200 oder 1200.50.",
  "Name the area.": "Benenne den Bereich.",
  "Name the supplier.": "Benenne den Lieferanten.",
  "An item stands in an area once.": "Ein Artikel steht in einem Bereich einmal.",
  "Say why; it stays in the history.": "Sag, warum; es bleibt im Verlauf.",
  'order: no order "{0}" was placed.': "Eine Bestellung „{0}“ wurde nicht aufgegeben.",
  "This device is enrolled already, as {0}.": "Dieses Gerät ist schon eingetragen, als {0}.",
  'Send the price list as the form\'s field "file".': "Sende die Preisliste als Formularfeld „file“.",
  "Say whose list it is.": "Sag, von wem die Liste ist.",
  'Send the choices as JSON, such as {"12": "Dry gin"}.':
    "Sende die Auswahl als JSON, etwa '{'\"12\": \"Dry gin\"'}'.",
  "Nothing was chosen to be taken over.": "Es wurde nichts zum Übernehmen gewählt.",
  'Send the sales file as the form\'s field "file".': "Sende die Verkaufsdatei als Formularfeld „file“.",
  "Nobody signed in here, so there is no password to change.":
    "Hier ist niemand angemeldet, also gibt es kein Passwort zu ändern.",
  "A spec needs at least one line.": "Ein Rezept braucht mindestens eine Zeile.",
  "no currency of ISO 4217; write three letters, as EUR":
    "keine Währung nach ISO 4217; schreib drei Buchstaben, wie EUR",
  "This database has its venue already.": "Diese Datenbank hat ihre Bar schon.",
  "Somebody else changed the settings meanwhile, and nothing was saved. Look at them as they stand now, then save again.":
    "Jemand anders hat die Einstellungen inzwischen geändert; nichts wurde gespeichert. Sieh sie dir an, wie sie jetzt sind, und speichere dann noch einmal.",
  "prices are not converted; export the book, put its money right, load it again":
    "Preise werden nicht umgerechnet; exportiere das Buch, stell seine Währung richtig und lade es neu",
  "what was entered would move by hours; export the book, put it right, load it again":
    "was eingetragen ist, würde sich um Stunden verschieben; exportiere das Buch, stell es richtig und lade es neu",
  "a house measure is at most 100 ml": "ein Hausmaß ist höchstens 100 ml",
  "chasing begins where watching does, or later":
    "nachgegangen wird frühestens dort, wo das Beobachten beginnt",
  "a region needs its country beside it; name the country too":
    "eine Region braucht ihr Land daneben; nenne auch das Land",
  "no regions of this country are known; leave it empty":
    "von diesem Land sind keine Regionen bekannt; lass es leer",
  "no such region of this country; known are {0}":
    "diese Region gibt es in diesem Land nicht; bekannt sind {0}",
  "sales file {0} of {1}: {2}": "Verkaufsdatei {0} von {1}: {2}",
  "{0} is empty; export these sales again if there were any":
    "{0} ist leer; exportiere diese Verkäufe noch einmal, falls es welche gab",
  "Nothing was loaded.": "Nichts wurde geladen.",
  "{0} row {1}: left out, {2}": "{0} Zeile {1}: ausgelassen, {2}",
  "{0}: … and {1} more rows": "{0}: … und {1} weitere Zeilen",
  "The very same file was read in before, as import {0}.":
    "Genau dieselbe Datei wurde schon eingelesen, als Nummer {0}.",
  "{0}: there is no sale in it; nothing was read in.":
    "{0}: Darin ist kein Verkauf; nichts wurde eingelesen.",
  "{0}: these days now have both sales with a time and sums without one, from different files. Probably the same sales are counted twice; take one of the two imports back with --undo.":
    "{0}: Diese Tage haben jetzt Verkäufe mit Uhrzeit und Summen ohne, aus verschiedenen Dateien. Wahrscheinlich sind dieselben Verkäufe doppelt gezählt; nimm eines von beiden zurück.",
  "{0}: sums of these days were there already and are replaced by the sums of this file. If both count, as of two tills, take this import back and read the file in with --add.":
    "{0}: Summen dieser Tage waren schon da und sind durch die Summen dieser Datei ersetzt. Wenn beide gelten, etwa von zwei Kassen, nimm das zurück und lies die Datei noch einmal ein, zu den Summen hinzu.",
  "{0}: {1} {2} the check and line number of a line read in before and another quantity, money or name; the later file holds.":
    "{0}: Mit Bon- und Zeilennummer einer früher gelesenen Zeile, aber anderer Menge, Geld oder Namen: {1} {2}; die spätere Datei gilt.",
  "line has": "Zeile",
  "lines have": "Zeilen",
  "The thread that undoes ended without a word.": "Das Zurücknehmen endete ohne Ergebnis.",
  "This database holds no venue yet. Bring one in with: ullage load DIR (or try: ullage demo).":
    "In dieser Datenbank ist noch keine Bar. Hol eine mit: ullage load DIR (oder versuch: ullage demo).",
  "The book has no count, sale or delivery yet, so there is no moment to reckon from. Load one, or give the moment (order --at, forecast --as-of, prep --for).":
    "Im Buch ist noch keine Zählung, kein Verkauf und keine Lieferung, also gibt es keinen Zeitpunkt, von dem aus zu rechnen wäre.",
};

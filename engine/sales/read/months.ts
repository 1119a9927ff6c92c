const MONTHS: Record<string, number> = {};
const MONTH_NAMES = [
  "january januar jänner janvier enero gennaio janeiro januari styczen stycznia tammikuu leden ledna",
  "february februar février febrero febbraio fevereiro februari luty lutego helmikuu unor unora",
  "march märz mars marzo março maart marec marzec marca maaliskuu brezen brezna maerz mrz mrt",
  "april avril abril aprile kwiecien kwietnia huhtikuu duben dubna avr abr",
  "may mai mayo maggio maio mei maj maja toukokuu kveten kvetna mag",
  "june juni juin junio giugno junho czerwiec czerwca kesäkuu cerven cervna giu",
  "july juli juillet julio luglio julho lipiec lipca heinäkuu cervenec cervence juil lug",
  "august août agosto augustus augusti sierpien sierpnia elokuu srpen srpna aou ago",
  "september septembre septiembre settembre setembro wrzesien wrzesnia syyskuu zari sept set",
  "october oktober octobre octubre ottobre outubro pazdziernik pazdziernika lokakuu rijen rijna okt out ott",
  "november novembre noviembre novembro listopad listopada marraskuu",
  "december dezember décembre diciembre dicembre dezembro desember grudzien grudnia joulukuu prosinec prosince dez dic",
];
for (const [index, names] of MONTH_NAMES.entries()) {
  for (const name of names.split(" ")) {
    const plain = bareWord(name);
    MONTHS[plain] = index + 1;
    // "listopad" is November in Polish and "listopada" too; three letters stand for the month unless taken.
    MONTHS[plain.slice(0, 3)] ??= index + 1;
  }
}
// Three letters that are two months in two languages stand for neither.
for (const short of ["lis", "cer", "led"]) delete MONTHS[short];

function bareWord(word: string): string {
  return word.normalize("NFKD").replace(/\p{M}/gu, "").toLowerCase();
}

/** The month of a name or its first three letters, in English and the usual European languages. "Mrz" → 3. */
export function monthOf(word: string): number | undefined {
  const plain = bareWord(word);
  return MONTHS[plain] ?? (plain.length === 4 ? MONTHS[plain.slice(0, 3)] : undefined);
}

import { foldHeading } from "#engine/sales/read/headings.ts";

/** What a till says a row is. */
export type RowKind = "sale" | "void" | "modifier" | "not a sale";

const KINDS: [RowKind, string][] = [
  [
    "sale",
    "sale|sales|sold|item|line|product|normal|regular|ok|closed|complete|completed|paid|comp|comped|promo|staff|happy hour|order|ordered|open|sent|fired|served|verkauf|artikel|vente|venta|vendita|venda|verkoop|forsaljning|salg|sprzedaz|myynti|prodej|active|finished",
  ],
  [
    "void",
    "v|void|voided|void item|refund|refunded|return|returned|reversal|reversed|cancel|canceled|cancelled|cancellation|correction|deleted|removed|storno|storniert|stornierung|erstattung|retoure|ruckgabe|gutschrift|annule|annulee|annulation|annuler|retour|remboursement|rembourse|avoir|anulado|anulada|anulacion|devolucion|devuelto|reembolso|cancelado|annullato|annullata|annullamento|reso|rimborso|estorno|estornado|devolucao|anulacao|geannuleerd|annulering|retourneren|terugbetaling|makulerad|makulering|aterbetalning|retur|annulleret|annulleret|refusjon|refundering|anulowano|zwrot|hyvitys|palautus|mitatoity|vraceno|vratka",
  ],
  [
    "modifier",
    "modifier|mod|option|add on|addon|extra|choice|instruction|special instruction|zusatz|modifikator|supplement|modificateur|modificador|opcion|modificatore|variante|aggiunta|toevoeging|tillval|tilvalg|dodatek|lisa|component",
  ],
  [
    "not a sale",
    "payment|tender|tip|gratuity|tax|vat|discount|service charge|surcharge|cash|card|deposit|gift card|opening|open drawer|no sale|paid out|paid in|total|subtotal|header|footer|zahlung|trinkgeld|steuer|rabatt|paiement|pourboire|remise|pago|propina|descuento|pagamento|mancia|sconto|gorjeta|desconto|betaling|fooi|korting|summary",
  ],
];
const KIND_BY_WORD = new Map(
  KINDS.flatMap(([kind, words]) => words.split("|").map((word) => [word, kind] as const)),
);

const MEANS_OF_PAYMENT = new Set(["cash", "card", "gift card"]);

/** Whether a word names a way of paying, which a row of its own may be, or every sale may say. */
export function isMeansOfPayment(cell: string): boolean {
  return MEANS_OF_PAYMENT.has(foldHeading(cell));
}

const YES = new Set("yes y true t 1 x ja j oui o si s sim ano tak kylla".split(" "));
const NO = new Set(["", ..."no n false f 0 nein non nao nej nei nie ei ne".split(" ")]);
const VOID_HEADING =
  /\b(?:void|voided|refund|refunded|storno|storniert|annule|anulado|annullato|estorno|geannuleerd)\b/;

/** The kind of a row by the till's word for it; undefined for an unknown word. "Storniert" → "void". */
export function kindOf(cell: string, heading: string): RowKind | undefined {
  const word = foldHeading(cell);
  if (VOID_HEADING.test(foldHeading(heading))) {
    if (YES.has(word)) return "void";
    if (NO.has(word)) return "sale";
  }
  if (word === "") return "sale";
  return KIND_BY_WORD.get(word) ?? voidWithin(word);
}

/** "Item void", "Void after send" and "Partial refund" are voids; "no refund" is not ours to read. */
function voidWithin(word: string): RowKind | undefined {
  const words = word.split(" ");
  if (words.length > 4 || words.some((part) => NO.has(part) || part === "not")) return undefined;
  return words.some((part) => KIND_BY_WORD.get(part) === "void") ? "void" : undefined;
}

const TOTALS = new Set(
  "total|totals|grand total|sub total|subtotal|sum|report total|day total|daily total|overall total|net total|total net|total sales|sales total|summe|gesamt|gesamtsumme|zwischensumme|tagessumme|endsumme|insgesamt|total general|sous total|total general ttc|total ttc|totale|totale generale|subtotale|suma|suma total|totaal|eindtotaal|subtotaal|totalt|summa|i alt|sum total|razem|lacznie|yhteensa|valisumma|celkem|soucet|total geral".split(
    "|",
  ),
);

/** Whether a cell is the label of a total row. "Grand total:" → true; "Total Eclipse" → false. */
export function isTotalLabel(cell: string): boolean {
  if (cell.length > 60) return false;
  const folded = foldHeading(cell);
  return TOTALS.has(folded) || /^(?:grand |sub ?)?total (?:for|of|per|sales|revenue|items?)\b/.test(folded);
}

/** Whether a lone cell is what a report prints above or below its rows: who made it, when, and of what. */
export function isReportNote(cell: string): boolean {
  return /^\W*(?:printed|generated|exported|created|report|page|end of|filter|filters|period|from|gedruckt|erstellt|exportiert|bericht|seite|zeitraum|imprim|export|edit[ée]|page|p[ée]riode|rapport|informe|impreso|generado|p[áa]gina|periodo|stampato|pagina|gerado|impresso|afgedrukt|utskrive|udskrevet|wydrukowano|strona)/i.test(
    cell,
  );
}

/** Whether a title line tells when the report was made rather than which day it is about. */
export function isPrintNote(cell: string): boolean {
  return /\b(?:printed|generated|exported|created|run|print|gedruckt|erstellt|exportiert|druckdatum|imprim|edit[ée]|export|impreso|generado|emitido|stampato|generato|impresso|gerado|afgedrukt|utskrive|udskrevet|wydrukowano|tulostettu|vytisteno)/i.test(
    cell,
  );
}

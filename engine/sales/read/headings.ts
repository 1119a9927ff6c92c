/** What a column of a till's file holds, as far as sales are concerned. */
export type Role =
  | "when"
  | "date"
  | "time"
  | "businessDate"
  | "item"
  | "modifiers"
  | "parent"
  | "quantity"
  | "gross"
  | "discount"
  | "net"
  | "unitPrice"
  | "check"
  | "lineNo"
  | "till"
  | "kind"
  | "staff"
  | "other";

export type NamedRole = { role: Role; score: number };

/**
 * Headings by role, in English, German, French, Spanish, Italian, Portuguese, Dutch, Swedish, Danish, Norwegian, Polish,
 * Finnish and Czech; best first. Common practice; folded by foldHeading.
 */
const WORDS: Record<Exclude<Role, "other">, string> = {
  when: "sold at|sale time|time of sale|rung at|ordered at|order time|timestamp|time stamp|date time|datetime|date and time|date & time|item time|sent at|sent time|created at|created|sold on|sold|when|closed at|close time|closed|closing time|check closed|paid at|payment time|transaction time|order date time|opened at|open time|opened|zeitpunkt|datum uhrzeit|datum zeit|datum und uhrzeit|zeitstempel|verkauft am|abgeschlossen um|abgeschlossen|bonzeit|date heure|date et heure|horodatage|vendu le|fecha hora|fecha y hora|data ora|data e ora|data hora|data e hora|tijdstip|datum tijd|datum en tijd|verkocht op|tidpunkt|datum tid|dato tid|data i godzina|paivays ja aika|datum a cas|epoch|unix time",
  date: "date|sale date|sales date|order date|transaction date|check date|day|datum|verkaufsdatum|bondatum|belegdatum|tag|jour|date de vente|fecha|fecha de venta|dia|data|data vendita|data di vendita|giorno|data da venda|verkoopdatum|dag|dato|salgsdato|forsaljningsdatum|data sprzedazy|dzien|paivamaara|pvm|paiva|den|datum prodeje",
  time: "time|hour|order hour|time of day|clock|uhrzeit|zeit|heure|hora|ora|orario|tijd|tid|klokkeslett|klokkeslaet|klockslag|godzina|czas|aika|kello|kellonaika|cas",
  businessDate:
    "business date|business day|trading date|trading day|service date|fiscal date|accounting date|operating day|operational date|buchungstag|geschaftstag|geschaeftstag|kassentag|betriebstag|journee|journee comptable|date comptable|jour comptable|dia de negocio|fecha de negocio|fecha contable|dia contable|jornada|giornata|giornata contabile|data contabile|data contabilistica|boekdatum|werkdag|bokforingsdatum|dzien roboczy",
  item: "ring name|menu item|menu item name|item name|item|product name|product|article name|article|drink|drink name|sold item|plu name|button|dish|item description|product description|description|artikel|artikelname|artikelbezeichnung|bezeichnung|produkt|produktname|getrank|getraenk|speise|warenbezeichnung|libelle|designation|nom de l article|nom article|nom du produit|produit|boisson|articulo|nombre del articulo|producto|nombre del producto|bebida|descripcion|articolo|nome articolo|prodotto|nome prodotto|bevanda|descrizione|artigo|produto|nome do produto|descricao|item do menu|artikelnaam|omschrijving|productnaam|drank|artikelnamn|benamning|vara|varunamn|varenavn|vare|produktnavn|towar|nazwa towaru|nazwa produktu|nazwa|pozycja|tuote|tuotenimi|tuotteen nimi|nimike|polozka|zbozi|nazev|nazev polozky|menu|name|bezeichnung artikel|posten|what",
  modifiers:
    "modifiers|modifier|modifier name|item modifiers|options|option|extras|extra|add ons|addons|add on|customisation|customization|special instructions|item notes|variations|modifikatoren|modifikator|zusatze|zusaetze|zusatz|optionen|beilagen|anderungen|supplements|supplement|modificateurs|modifications|modificadores|modificador|extra s|opciones|modificatori|variazioni|varianti|aggiunte|modificacoes|opcoes|toevoegingen|opties|bijzonderheden|tillval|tilvalg|tilleggsvalg|dodatki|modyfikatory|lisatiedot|lisukkeet|upravy|prisady|mods|choices|choice description|choice|item modifications|modifications",
  parent:
    "parent|parent line|parent item|parent id|parent line id|parent row|belongs to|parent item id|modifies|gehort zu|ubergeordnet|hauptartikel|article parent|ligne parent|articulo padre|padre|riga padre|articolo padre",
  quantity:
    "quantity|qty|quantity sold|qty sold|item qty|item quantity|items sold|units sold|units|sold qty|count|item count|sold count|number sold|pieces|pcs|qnt|menge|anzahl|stuck|stueck|stk|verkaufte menge|absatz|anz|quantite|qte|nombre|nb|quantite vendue|cantidad|cant|cantidad vendida|unidades|uds|quantita|qta|q ta|pezzi|venduti|quantidade|qtd|qtde|aantal|hoeveelheid|stuks|antal|mangd|antall|maengde|stk solgt|ilosc|sztuk|szt|maara|kpl|lkm|mnozstvi|pocet|ks|number of items",
  gross:
    "gross|gross sales|gross amount|gross total|gross price|gross revenue|line total|item total|total|total amount|total price|amount|sales|sales amount|revenue|turnover|value|total sales|extended price|ext price|brutto|bruttoumsatz|bruttobetrag|umsatz|umsatz brutto|betrag|gesamt|gesamtpreis|gesamtbetrag|summe|erlos|wert|montant|montant ttc|total ttc|ttc|prix ttc|brut|ca ttc|ventes brutes|montant brut|importe|importe bruto|ventas brutas|bruto|venta bruta|monto|importo|lordo|importo lordo|totale|totale lordo|vendite lorde|incasso|valor|valor bruto|valor total|montante|bedrag|bruto omzet|omzet|totaal|totaalbedrag|brutobedrag|belopp|summa|bruttobelopp|forsaljning|belob|bruttobelob|belop|bruttobelop|kwota|kwota brutto|wartosc|wartosc brutto|brutto zl|brutto yhteensa|yhteensa|myynti|bruttomyynti|castka|celkem|castka s dph|trzba|takings|money|total spent|amount spent",
  discount:
    "discount|discounts|discount amount|total discount|item discount|less discount|rabatt|rabattbetrag|nachlass|remise|remises|reduction|descuento|descuentos|sconto|sconti|desconto|descontos|korting|rabat|znizka|alennus|sleva",
  net: "net|net sales|net amount|net total|net price|net revenue|sales net|net value|net line total|netto|nettoumsatz|nettobetrag|umsatz netto|netto umsatz|net ht|montant ht|total ht|ht|ca ht|ventes nettes|montant net|importe neto|neto|ventas netas|venta neta|base imponible|netto totale|importo netto|vendite nette|imponibile|liquido|valor liquido|vendas liquidas|netto omzet|netto bedrag|nettobedrag|nettobelopp|netto belopp|nettobelob|nettobelop|nettosalg|wartosc netto|kwota netto|netto zl|nettomyynti|verollinen netto|castka bez dph|subtotal after discount|amount net",
  unitPrice:
    "unit price|price each|price per unit|item price|price|each|selling price|menu price|list price|einzelpreis|stuckpreis|stueckpreis|preis|e preis|verkaufspreis|prix unitaire|prix|pu|p u|precio unitario|precio|p unit|prezzo unitario|prezzo|preco unitario|preco|stuksprijs|prijs|eenheidsprijs|styckpris|pris|enhetspris|stykpris|cena|cena jednostkowa|hinta|yksikkohinta|cena za kus",
  check:
    "check|guest check|check no|check number|check nr|check id|check num|order|order no|order number|order id|order nr|receipt|receipt no|receipt number|receipt id|receipt nr|bill|bill no|bill number|ticket|ticket no|ticket number|ticket id|invoice|invoice no|invoice number|transaction|transaction id|transaction no|transaction number|sale id|sale no|sale number|tab|tab no|docket|docket no|bon|bonnr|bon nr|bonnummer|beleg|belegnr|beleg nr|belegnummer|rechnung|rechnungsnr|rechnungsnummer|rechnung nr|bestellung|bestellnummer|vorgang|n note|numero de note|commande|n commande|numero de commande|facture|n facture|numero de ticket|n ticket|recu|cuenta|pedido|n pedido|numero de pedido|recibo|factura|n ticket|comprobante|scontrino|n scontrino|numero scontrino|ordine|n ordine|numero ordine|conto|ricevuta|comanda|n pedido|conta|fatura|talao|bestelling|bonnetje|rekening|kassabon|kvitto|kvittonr|kvittonummer|nota|bestallning|kvittering|bilag|bilagsnr|ordre|ordrenr|paragon|nr paragonu|rachunek|nr rachunku|zamowienie|kuitti|kuittinro|kuittinumero|tilaus|uctenka|cislo uctenky|objednavka|ucet",
  lineNo:
    "line|line no|line number|line id|line nr|line item|row id|seq|sequence|sequence no|position|pos|pos nr|item line|check line|zeile|zeilennr|positionsnr|ligne|n ligne|linea|n linea|riga|n riga|linha|regel|regelnr|rad|radnr|linje|linjenr|pozycja nr|rivi|rivinro|radek|line item id|detail id|uid|uuid",
  till: "till|till no|register|register no|terminal|terminal id|terminal no|device|pos terminal|workstation|kasse|kassennr|kassen nr|kassa|caisse|n caisse|caja|cassa|caixa|kassanro|pokladna|kasa|station|revenue center|revenue centre|outlet|location|store|site|filiale|standort|bar|area|room|venue",
  kind: "kind|type|line type|row type|record type|item type|transaction type|sale type|status|item status|line status|void|voided|is void|is voided|refund|refunded|is refund|void refund|action|event|event type|entry type|operation|reason code|art|typ|vorgangsart|belegart|storno|storniert|buchungsart|statut|etat|annule|annulation|tipo|tipo de linea|tipo de operacion|estado|anulado|anulacion|tipo operazione|tipo riga|stato|annullato|annullamento|tipo de operacao|anulado estornado|estorno|soort|status regel|geannuleerd|handelse|haendelse|tila|tyyppi|stav|rodzaj",
  staff:
    "server|server name|served by|waiter|waitress|bartender|barkeeper|employee|employee name|employee id|staff|staff name|staff member|cashier|clerk|operator|user|user name|username|opened by|closed by|rung by|sold by|created by|manager|approved by|voided by|sales person|salesperson|team member|kellner|kellnerin|bediener|bedienung|mitarbeiter|kassierer|verkaufer|verkaeufer|benutzer|serveur|serveuse|vendeur|caissier|employe|utilisateur|camarero|camarera|mesero|mesera|empleado|vendedor|cajero|usuario|cameriere|cameriera|operatore|cassiere|dipendente|addetto|utente|empregado|funcionario|garcom|atendente|operador|medewerker|ober|kelner|gebruiker|servitor|personal|anvandare|tjener|medarbejder|ansatt|betjent av|obsluga|kasjer|pracownik|tarjoilija|tyontekija|myyja|kassahenkilo|cisnik|obsluha|zamestnanec|guest|guest name|customer|customer name|customer id|member|kunde|kundenname|gast|client|nom client|cliente|klant|kund|klient|asiakas|zakaznik|phone|email|e mail",
};

/** Among the words of persons, those of guests: they are never kept. */
const GUEST_WORDS = new Set(
  "guest customer member kunde kundenname gast client cliente klant kund klient asiakas zakaznik phone email e mail".split(
    " ",
  ),
);

/** Whether a heading of persons means those who work there. "Server" → true; "Guest name", "Customer e-mail" → false. */
export function isStaffHeading(heading: string): boolean {
  return !foldHeading(heading)
    .split(" ")
    .some((word) => GUEST_WORDS.has(word));
}

/** Words that make a heading something else, whatever else it says: a tax, a code, a cost, a category. */
const OTHER_WORDS = new Set(
  (
    "tax vat gst mwst ust tva iva btw moms pdv dph alv ptu steuer taxes category categories group family class department dept kategorie warengruppe gruppe categorie famille categoria familia grupo gruppo famiglia reparto groep kategori grupp gruppe kategoria osasto skupina " +
    "id sku plu code barcode ean gtin nr number no num guid cost kosten cout costo custo kostnad koszt table tisch mesa tavolo tafel bord stolik poyta stul seat covers guests pax tip tips gratuity trinkgeld pourboire propina mancia gorjeta fooi payment tender paid payed zahlungsart paiement pago pagamento betaling " +
    "reason comment comments note notes bemerkung kommentar currency wahrung devise moneda valuta rate percent pct margin profit balance change cash card service surcharge weekday week month year quarter daypart"
  ).split(" "),
);

/** What lies on the shelf, when it was made and what a whole check came to is no sale, however much it sounds like one. */
const ASIDE_WORDS = new Set(
  "stock inventory onhand available remaining reorder bestand lagerbestand existencias giacenza estoque voorraad manufactured produced expiry expires expiration birth shipped subtotal".split(
    " ",
  ),
);

const BY_NAME = new Map<string, NamedRole>();
for (const [role, words] of Object.entries(WORDS) as [Role, string][]) {
  const list = words.split("|");
  for (const [index, word] of list.entries()) {
    const score = 1 - (0.3 * index) / list.length;
    const known = BY_NAME.get(word);
    if (known === undefined || known.score < score - 0.25) BY_NAME.set(word, { role, score });
  }
}

/** A heading as it is compared: no accents, case, marks, units or currencies. "Net Sales (EUR)" → "net sales". */
export function foldHeading(heading: string): string {
  return heading
    .slice(0, 200)
    .replace(/[([].*?[)\]]/g, " ")
    .replace(/(?<=[\p{Ll}])(?=\p{Lu})/gu, " ")
    .normalize("NFKD")
    .replace(/\p{M}|\p{Sc}/gu, "")
    .replace(/ł/gi, "l")
    .replace(/[øö]/gi, "o")
    .replace(/æ/gi, "ae")
    .replace(/ß/g, "ss")
    .toLowerCase()
    .replace(/[^\p{L}\p{N}]+/gu, " ")
    .replace(/\b(?:eur|usd|gbp|chf|cad|aud|nzd|sek|nok|dkk|pln|czk|in|the|utc|gmt|local|localtime)\b/g, " ")
    .trim()
    .replace(/\s+/g, " ");
}

/**
 * The role a heading names, and how well: 1 for its usual word, less for rarer words and for parts of a longer heading.
 *
 * Undefined when it names none. "Qty." → quantity; "Kellner" → staff; "VAT" → other.
 */
export function roleOf(heading: string): NamedRole | undefined {
  const folded = foldHeading(heading);
  if (folded === "") return undefined;
  const whole = BY_NAME.get(folded) ?? numbered(folded);
  if (whole !== undefined) return whole;
  const counted = BY_NAME.get(folded.replace(NUMBER_WORD, ""));
  if (counted !== undefined && ["check", "lineNo", "till"].includes(counted.role)) return counted;
  const words = folded.split(" ");
  if (words.some((word) => ASIDE_WORDS.has(word))) return { role: "other", score: 0.8 };
  if (words.includes("count")) return { role: "other", score: 0.8 };
  if (words.some((word) => BY_NAME.get(word)?.role === "staff")) return { role: "staff", score: 0.8 };
  if (words.some((word) => OTHER_WORDS.has(word))) return { role: "other", score: 0.8 };
  return words.length > 4 ? undefined : partly(words);
}

const NUMBER_WORD = /^(?:n|no|nr|num|numero|nummer|number|id) | (?:n|no|nr|num|numero|nummer|number|id)$/;

/** Headings that name what was sold where nothing else does, but may also stand beside it with more words about it. */
const VAGUE_ITEMS = new Set(
  "button|plu name|item description|product description|description|artikelbezeichnung|bezeichnung|libelle|designation|descripcion|descrizione|descricao|omschrijving|benamning|nazwa|pozycja|nimike|nazev|menu|name|posten|what|dish".split(
    "|",
  ),
);

/** Whether a heading names what was sold without doubt. "Item" → true; "Description" → false. */
export function isPlainItem(heading: string): boolean {
  return !VAGUE_ITEMS.has(foldHeading(heading));
}

const VOID_COUNT =
  /\b(?:void|voided|refund|refunded|return|returned|cancelled|storno|stornierte|annule|anulada|annullat[ai]|geannuleerd)\b.*\b(?:qty|quantity|count|units|menge|anzahl|quantite|qte|cantidad|quantita|aantal|antal)\b/;

/** Whether a heading counts what was taken back in a column of its own. "Void Qty" → true. */
export function isVoidCount(heading: string): boolean {
  return VOID_COUNT.test(foldHeading(heading));
}

/** "Modifier 2" is a modifier column; so is "Option 3". */
function numbered(folded: string): NamedRole | undefined {
  const match = /^(.*\D) ?\d{1,2}$/.exec(folded);
  const known = BY_NAME.get((match?.[1] ?? "").trim());
  return known?.role === "modifiers" ? known : undefined;
}

/** The longest run of words that is a heading by itself; how much of the heading it covers is how sure it is. */
function partly(words: string[]): NamedRole | undefined {
  for (let length = words.length - 1; length > 0; length -= 1) {
    for (let start = words.length - length; start >= 0; start -= 1) {
      const known = BY_NAME.get(words.slice(start, start + length).join(" "));
      if (known !== undefined && length / words.length >= 0.5)
        return { role: known.role, score: known.score * (0.5 + (0.3 * length) / words.length) };
    }
  }
  return undefined;
}

import type { Unit } from "#engine/measure/units.ts";

// What German spec text is read by, beside the English of measure-words.ts and piece-words.ts. Common practice of bars.

/** How each unit is written; "cl", "ml", "liter", "g" and "dash" are the same in both languages. */
export const UNIT_WORDS: readonly (readonly [unit: Unit, words: string])[] = [
  ["dash", "spritzer"],
  ["barspoon", "barlöffel|barloeffel"],
  ["tbsp", "esslöffel|essloeffel|eßlöffel"],
  ["tsp", "teelöffel|teeloeffel"],
  ["drop", "tropfen"],
  ["splash", "schuss|schuß"],
  ["cl", "zentiliter"],
  ["dl", "deziliter"],
  ["g", "gramm"],
  ["kg", "kilogramm"],
  ["each", "stück|stueck|stk"],
];

/** In these capitals, or in small letters: "1 El …" is the beginning of a label. */
export const UNIT_LETTERS: readonly (readonly [unit: Unit, letters: string])[] = [
  ["barspoon", "BL|bl"],
  ["tbsp", "EL|el"],
  ["tsp", "TL|tl"],
];

/** Measures that no venue's units know, or that are another amount in every house. */
export const VAGUE_WORDS =
  "prisen?|messerspitzen?|msp|handvoll|hand voll|teile?|tassen?|becher|flaschen?|dosen|gläser|glas|bund|bünde?|päckchen|packungen|packung|pck|beutel|schlucke?|hauch|kanne|kännchen|kellen?|kugeln?|knollen?|etwas|wenig|einige|paar|mehrere|reichlich|viel|zentimeter";

/** What a fruit or herb is cut or picked into, as it ends the name of one piece: "Gurkenscheibe", "Minzblatt". */
export const PIECES: readonly (readonly [one: string, many: string])[] = [
  ["scheibe", "scheiben"],
  ["zeste", "zesten"],
  ["spalte", "spalten"],
  ["schnitz", "schnitze"],
  ["blatt", "blätter"],
  ["zweig", "zweige"],
  ["stängel", "stängel"],
  ["stange", "stangen"],
  ["streifen", "streifen"],
  ["spirale", "spiralen"],
  ["rad", "räder"],
  ["ring", "ringe"],
  ["würfel", "würfel"],
  ["achtel", "achtel"],
  ["viertel", "viertel"],
  ["hälfte", "hälften"],
  ["schale", "schalen"],
  ["schote", "schoten"],
  ["blüte", "blüten"],
];

/** Things that are counted whole, by the end of their name, so that "Cocktailkirsche" is one too. */
export const COUNTED: readonly (readonly [one: string, many: string])[] = [
  ["limette", "limetten"],
  ["zitrone", "zitronen"],
  ["orange", "orangen"],
  ["apfel", "äpfel"],
  ["birne", "birnen"],
  ["gurke", "gurken"],
  ["maracuja", "maracujas"],
  ["pflaume", "pflaumen"],
  ["aprikose", "aprikosen"],
  ["feige", "feigen"],
  ["beere", "beeren"],
  ["kirsche", "kirschen"],
  ["traube", "trauben"],
  ["olive", "oliven"],
  ["nelke", "nelken"],
  ["bohne", "bohnen"],
  ["kapsel", "kapseln"],
  ["eiweiß", "eiweiße"],
  ["eiweiss", "eiweisse"],
  ["eigelb", "eigelbe"],
];

/** Of these the singular is an English word as well, and tells no language. */
export const ENGLISH_TOO = ["orange", "olive", "ring"];

/** Names of so few letters that they are only counted as a whole word. */
export const COUNTED_ALONE: readonly (readonly [one: string, many: string])[] = [["ei", "eier"]];

/** Of which a name alone, without a number, means one. */
export const USUALLY_ONE = ["kirsche", "olive", "eiweiß", "eiweiss", "eigelb"];

/** How a fruit or herb begins the name of its piece, where that is not its name with an "n" behind an "e". */
export const STEMS: readonly (readonly [end: string, stem: string])[] = [
  ["minze", "minz"],
  ["kirsche", "kirsch"],
  ["beere", "beer"],
  ["melisse", "melissen"],
  ["vanille", "vanille"],
];

/** Fruit that a bar pours as juice alone, and the juice that is meant where it is measured by volume. */
export const JUICES: readonly (readonly [fruit: string, juice: string])[] = [
  ["limette", "limettensaft"],
  ["zitrone", "zitronensaft"],
  ["orange", "orangensaft"],
];

export const NUMBERS: readonly (readonly [words: string, figures: string])[] = [
  ["(?:eine?[rnms]?\\s+)?halbe?[rnms]?", "1/2"],
  ["anderthalb|eineinhalb|ein(?:e|en)?\\s+und\\s+ein(?:e|en)?\\s+halbe?[rnms]?", "1 1/2"],
  ["zweieinhalb", "2 1/2"],
  ["eine?[rnms]?", "1"],
  ["zwei", "2"],
  ["drei", "3"],
  ["vier", "4"],
  ["fünf", "5"],
  ["sechs", "6"],
  ["sieben", "7"],
  ["acht", "8"],
  ["neun", "9"],
  ["zehn", "10"],
  ["zwölf", "12"],
];

/** How a measure or a piece may be qualified without being another; kept as a note. */
export const QUALIFIERS =
  "knapp|gut|gehäuft|gestrichen|groß|gross|klein|dünn|dick|lang|kurz|breit|frisch|mittelgroß|reif|geachtelt|halbiert|getrocknet|unbehandelt|schmal|fein";

/** Words that only say which of a kind: before "oder" they need the noun that follows the second. */
export const DESCRIPTIONS =
  "weiß|weiss|braun|rot|gold|golden|hell|dunkl|dunkel|trocken|süß|süss|alt|jung|gereift|klar|leicht|kräftig|würzig|frisch|rosa|grün|gelb";

export const APPROXIMATELY = "ca\\.?|circa|zirka|etwa|ungefähr|rund";

/** What is pressed or rubbed of a fruit: "Saft von 1/2 Zitrone" asks for half a lemon. */
export const PARTS_OF = "saft|schale|abrieb|zesten?|fruchtfleisch";

export const GARNISH = "garnitur|garnieren|garnierung|deko|dekoration|dekorieren";

/** What filling a glass up is called. */
export const FILLING = "auffüllen|auffuellen|aufgießen|aufgiessen|auftoppen|toppen";

/** What is said of a thing and makes it no other: "kaltes Sodawasser" is the item "Sodawasser". */
export const STATES = "(?:frisch|kalt|eiskalt|gekühlt|gepresst)(?:e[rnms]?)?";

/** Remarks that people write behind a name without a comma. */
export const REMARKS =
  "(?:oder\\s+)?nach\\s+(?:geschmack|belieben|wunsch)|oder\\s+(?:ähnlich\\p{L}*|mehr|weniger)|(?:zum|zur|als|für\\s+(?:die|den)|für)\\s+(?:garnieren|garnitur|garnierung|deko|dekoration|dekorieren|servieren|rand|muddeln)|frisch\\s+gepresst|optional|zimmerwarm|eiskalt|gekühlt|geachtelt|geviertelt|halbiert|in\\s+(?:sirup|lake|öl|alkohol|scheiben|spalten|stücken|stücke|achteln|vierteln|würfeln)";

/** What is done with a drink. */
export const STEPS =
  "schütteln|rühren|verrühren|abseihen|seihen|servieren|mixen|mischen|muddeln|zerdrücken|andrücken|geben|gießen|giessen|füllen|bauen|legen|reiben|pressen|abspritzen|hinzufügen|hinzugeben|zugeben|kühlen|erhitzen|kochen";

/** What else stands in a recipe and names no item of it. */
export const TOOLS =
  "shaken|zubereitung|anleitung|methode|glas|gläser|shaker|rührglas|tumbler|becherglas|sieb|stößel|barsieb|jigger";

/** Words that no label is written with: what is left over could be an amount, a second item or a step. */
export const PROSE =
  "der|die|das|den|dem|des|ist|sind|wird|werden|auf|ins|im|in|aus|über|dann|danach|alle|alles|bis|damit|sowie|dazu|noch|auch|wenn|falls|je|pro|man|zusammen|für|zum|zur|nach|als|bei|ohne|statt";

export const HEADINGS =
  "zutaten|rezept|rezeptur|garnitur|deko|dekoration|zubereitung|anleitung|für\\s+\\d+\\s+drinks?";

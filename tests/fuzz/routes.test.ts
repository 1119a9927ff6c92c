import fc from "fast-check";
import { beforeAll, describe, expect, it } from "vitest";
import { readBook } from "#db/book/read-book.ts";
import { IN_MEMORY, openDatabase } from "#db/open.ts";
import { importSales } from "#db/sales-repository.ts";
import { createApp } from "#server/app.ts";
import { DEMO_OWNER } from "#server/people/actor.ts";
import { HOSTILE, type Schema, spoilt, valuesOf } from "#tests/fuzz/from-schema.ts";
import { aDoor, CHEAP, type TestBar } from "#tests/people/door.ts";
import { DOING, LINE } from "#tests/support/acts.ts";
import { smallBook } from "#tests/support/small-book.ts";

// Every route of the API's own document, with input as it asks for, spoilt, and hostile. ULLAGE_FUZZ=2000 looks further.
const RUNS = Number(process.env.ULLAGE_FUZZ ?? 20);
const LONGEST_MS = 5_000;
const URL_HERE = "http://localhost:4680";

type Parameter = { in: string; name: string; required?: boolean; schema?: Schema };
type Operation = { parameters?: Parameter[]; requestBody?: { content: Record<string, { schema: Schema }> } };
type Asked = {
  method: string;
  path: string;
  headers: Record<string, string>;
  body: string | FormData | null;
};

const WORDS = [
  ...[
    "Dry gin",
    "Old Quay rum",
    "Lime",
    "Lime juice",
    "Sugar syrup",
    "Orgeat",
    "Soda",
    "1 L",
    "700 ml",
    "box",
  ],
  ...[
    "Quayside Drinks",
    "Green Barrow",
    "Back bar",
    "Cellar",
    "Gimlet",
    "House Sour",
    "Week 9",
    "Week 10",
    "PO 12",
  ],
  ...[
    "2026-03-08",
    "2026-03-08 10:00",
    "2026-03-02T10:00:00Z",
    "5",
    "12.50",
    "0",
    "true",
    "over-pour",
    "skin",
    "ml",
  ],
];
const word = fc.constantFrom(...WORDS);

/** What a route's document says of it. */
const asked = await createApp({
  db: openDatabase(IN_MEMORY),
  now: () => new Date(),
  webFolder: "/nowhere",
  signIn: { openAs: DEMO_OWNER },
}).request("/api/openapi.json");
const document = (await asked.json()) as { paths: Record<string, Record<string, Operation>> };
type Route = [name: string, method: string, path: string, operation: Operation];

/** Acts first, then the reports that must bear what was entered; last what shuts doors or the past, after which little would be let in. */
function placeOf([, method, path]: Route): number {
  if (/^\/api\/(sign-in|people|devices|tokens|closing)/.test(path)) return 2;
  return method === "GET" ? 1 : 0;
}

const ROUTES = Object.entries(document.paths)
  .flatMap(([path, methods]) =>
    Object.entries(methods).map(([method, operation]): Route => {
      const name = method.toUpperCase();
      return [`${name} ${path}`, name, path, operation];
    }),
  )
  .sort((one, other) => placeOf(one) - placeOf(other));

const hostileText = fc.constantFrom(
  ...HOSTILE.map((value) => (typeof value === "string" ? value : JSON.stringify(value))),
);

/** A text as it stands in an address: what is wrong with it is on purpose. */
function inAddress(schema: Schema | undefined): fc.Arbitrary<string> {
  const usual = valuesOf(schema ?? { type: "string" }, word).map(String);
  const id = fc.integer({ min: 1, max: 12 }).map(String);
  const written = fc.oneof(
    { weight: 4, arbitrary: usual },
    { weight: 2, arbitrary: id },
    { weight: 2, arbitrary: hostileText },
  );
  const encoded = written.map((text) =>
    encodeURIComponent(text.replace(/\p{Surrogate}/gu, "?").slice(0, 3_000)),
  );
  return fc.oneof(
    { weight: 12, arbitrary: encoded },
    { weight: 1, arbitrary: fc.constantFrom("%", "%E0%A4%A", "%ff", "%00", "..", "a&b=c#d") },
  );
}

const fileText = fc.oneof(
  fc.constant("Date,Item,Price,Qty\n2026-03-01,Gimlet,11.50,2\n"),
  fc
    .array(
      fc.constantFrom(
        "Date",
        "Item",
        ",",
        ";",
        "\n",
        '"',
        "2026-03-01",
        "Gimlet",
        "1",
        "-2",
        "\u0000",
        "=1+1",
      ),
      { maxLength: 40 },
    )
    .map((parts) => parts.join("")),
  hostileText,
);

function formOf(schema: Schema): fc.Arbitrary<FormData> {
  const texts = Object.entries(schema.properties ?? {}).filter(([name]) => name !== "file");
  const fields = fc.tuple(
    ...texts.map(([, part]) => fc.option(fc.oneof(valuesOf(part, word).map(String), hostileText))),
  );
  return fc.tuple(fc.option(fileText, { freq: 8 }), fields).map(([text, values]) => {
    const form = new FormData();
    if (text !== null) form.set("file", new File([text], "till.csv"));
    for (const [at, [name]] of texts.entries()) {
      const value = values[at];
      if (value !== null && value !== undefined) form.set(name, value);
    }
    return form;
  });
}

const deep = "[".repeat(100_000);
const notJson = fc.constantFrom(
  "",
  "{",
  "null",
  "[]",
  '"text"',
  "NaN",
  "{}",
  `{"a":`,
  "\u0000",
  deep,
  `${deep}${"]".repeat(100_000)}`,
  `{"a":${"9".repeat(500)}}`,
);

function bodyOf(operation: Operation): fc.Arbitrary<Pick<Asked, "headers" | "body">> {
  const content = operation.requestBody?.content ?? {};
  const json = content["application/json"]?.schema;
  const form = content["multipart/form-data"]?.schema;
  if (form !== undefined) return formOf(form).map((body) => ({ headers: {}, body }));
  const asJson = (body: string) => ({ headers: { "content-type": "application/json" }, body });
  if (json === undefined)
    return fc.oneof(
      fc.constant({ headers: {}, body: null }),
      fileText.map((body) => ({ headers: { "content-type": "text/csv" }, body })),
    );
  const usual = valuesOf(json, word);
  const value = fc
    .oneof({ weight: 4, arbitrary: usual }, { weight: 5, arbitrary: spoilt(usual) })
    .map((one) => asJson(JSON.stringify(one)));
  const odd = fc
    .tuple(
      notJson,
      fc.constantFrom(
        "application/json",
        "text/plain",
        "application/json; charset=utf-16",
        "multipart/form-data",
      ),
    )
    .map(([body, type]) => ({ headers: { "content-type": type }, body }));
  return fc.oneof({ weight: 9, arbitrary: value }, { weight: 1, arbitrary: odd });
}

function askedOf(method: string, path: string, operation: Operation): fc.Arbitrary<Asked> {
  const { parameters = [] } = operation;
  const inPath = parameters.filter((one) => one.in === "path");
  const inQuery = parameters.filter((one) => one.in === "query");
  return fc
    .tuple(
      // Dots alone are no name in a path but a way out of it: the address would be another one.
      fc.tuple(...inPath.map(({ schema }) => inAddress(schema).filter((place) => !/^\.{1,2}$/.test(place)))),
      fc.tuple(...inQuery.map(({ schema }) => fc.option(inAddress(schema), { freq: 2 }))),
      method === "GET" ? fc.constant({ headers: {}, body: null }) : bodyOf(operation),
    )
    .map(([places, values, sent]) => {
      const filled = inPath.reduce((text, { name }, at) => text.replace(`{${name}}`, places[at] ?? ""), path);
      const query = inQuery
        .flatMap(({ name }, at) => (values[at] === null ? [] : [`${name}=${values[at]}`]))
        .join("&");
      return { method, path: query === "" ? filled : `${filled}?${query}`, ...sent };
    });
}

describe("every route, whatever it is asked", () => {
  let bar: TestBar;
  let app: ReturnType<typeof createApp>;
  let cookie = "";
  const signIn = async (): Promise<void> => {
    // What was asked before counts as so many wrong tries from this address.
    bar.db.sqlite.exec("delete from sign_in_tries");
    const { cookies } = await bar.signedIn(`Owner ${performance.now()}`, "owner");
    cookie = [...cookies].map(([name, value]) => `${name}=${value}`).join("; ");
  };
  beforeAll(async () => {
    const { book } = readBook(smallBook());
    bar = await aDoor(book);
    const lines = Array.from({ length: 6 }, (_, at) => ({ ...LINE, businessDate: `2026-03-0${at + 1}` }));
    await importSales(bar.db, {
      file: "till.csv",
      shape: { files: "till.csv" },
      refused: [],
      lines,
      ...DOING,
    });
    app = createApp({ db: bar.db, now: bar.now, webFolder: "/nowhere", hashing: CHEAP });
    await signIn();
  });

  it.each(ROUTES)(
    "%s answers, in time, and says what is wrong as everywhere",
    { timeout: 60_000 * Math.max(1, RUNS / 20) },
    async (_, method, path, operation) => {
      await fc.assert(
        fc.asyncProperty(askedOf(method, path, operation), async (asked) => {
          const startedMs = performance.now();
          const answer = await app.request(`${URL_HERE}${asked.path}`, {
            method: asked.method,
            body: asked.body,
            headers: { ...asked.headers, cookie, "sec-fetch-site": "same-origin" },
          });
          const text = await answer.text();
          expect(performance.now() - startedMs).toBeLessThan(LONGEST_MS);
          if (answer.status >= 500) throw new Error(`${answer.status}: ${text}`);
          const body: unknown = JSON.parse(text);
          if (answer.status >= 400) {
            expect(body).toEqual({
              problems: expect.arrayContaining([
                { field: expect.any(String), message: expect.stringMatching(/\S/) },
              ]),
            });
          } else expect(answer.status).toBeLessThan(300);
          // Who was signed out by what was asked comes in again; a bar that is gone would make the rest vain.
          if (answer.status === 401 || path.startsWith("/api/sign-in")) await signIn();
        }),
        { numRuns: RUNS },
      );
    },
  );

  it("the bar is still there and whole after all that", async () => {
    expect(bar.db.sqlite.pragma("integrity_check", { simple: true })).toBe("ok");
    const answer = await app.request(`${URL_HERE}/api/venue`, { headers: { cookie } });
    expect(answer.status).toBe(200);
    expect(({} as { isOwner?: boolean }).isOwner).toBeUndefined();
  });
});

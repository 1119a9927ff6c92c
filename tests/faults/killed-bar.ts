import { type ChildProcess, spawn } from "node:child_process";
import { join } from "node:path";
import { checkDatabase } from "#db/backup.ts";
import { loadBook } from "#db/book-repository.ts";
import { verifyChain } from "#db/history/chain.ts";
import { closeDatabase, openDatabase } from "#db/open.ts";
import { listImports, saleGroups } from "#db/sales-repository.ts";
import type { Random } from "#tests/simulate/random.ts";
import { root } from "#tests/support/build.ts";

/** What became of an act as far as whoever did it knows: told that it is kept, told that it is not, or left without an answer. */
type Outcome = "kept" | "refused" | "unknown";

/** One act of somebody in the bar, with a word of its own by which it is found again. */
type Act = {
  kind: "count" | "delivery" | "batch" | "ring name" | "import" | "undo";
  tag: string;
  outcome: Outcome;
  /** Lines of an import. */
  lines: number;
};

/** Who asks the server, as phones and the till's laptop do; everything asked is remembered with its answer. */
export class Model {
  readonly acts: Act[] = [];
  #next = 0;

  begin(kind: Act["kind"], tag: string | undefined, lines = 0): Act {
    this.#next += 1;
    const act: Act = { kind, tag: tag ?? `K${this.#next}`, outcome: "unknown", lines };
    this.acts.push(act);
    return act;
  }
}

/** The real server, compiled, on a database file; its owner is signed in. */
export async function startServer(db: string): Promise<{ server: ChildProcess; url: string }> {
  const server = spawn(process.execPath, [join(root, "tests", "browser", "serve-open.mjs"), db], {
    cwd: root,
    stdio: ["ignore", "pipe", "pipe"],
  });
  let said = "";
  server.stderr?.on("data", (chunk: Buffer) => {
    said += chunk.toString();
  });
  const url = await new Promise<string>((resolve, reject) => {
    server.stdout?.once("data", (chunk: Buffer) => resolve(chunk.toString().trim()));
    server.once("exit", (status) => reject(new Error(`the server ended with ${status}: ${said}`)));
  });
  return { server, url };
}

export function killed(server: ChildProcess): Promise<void> {
  const isOver = new Promise<void>((resolve) => server.once("exit", () => resolve()));
  server.kill("SIGKILL");
  return isOver;
}

type Send = { url: string; model: Model; random: Random };

/** Asks once; the act is kept or refused by the answer, and unknown without a whole one. */
async function asked(act: Act, ask: () => Promise<Response>): Promise<unknown> {
  try {
    const answer = await ask();
    const body: unknown = await answer.json();
    if (answer.ok) act.outcome = "kept";
    else if (answer.status < 500) act.outcome = "refused";
    else throw new Error(`${act.kind} ${act.tag}: ${answer.status} ${JSON.stringify(body)}`);
    return body;
  } catch (error) {
    // Killed in the middle of it: the connection broke.
    if (error instanceof TypeError || error instanceof SyntaxError) return undefined;
    throw error;
  }
}

function post(
  url: string,
  path: string,
  body: unknown,
  headers: Record<string, string> = {},
): Promise<Response> {
  return fetch(`${url}${path}`, {
    method: "POST",
    headers: { "content-type": "application/json", origin: url, ...headers },
    body: JSON.stringify(body),
  });
}

const AT = "2026-11-25T10:00:00Z";

function deliveryOf(tag: string) {
  return [
    {
      at: AT,
      supplier: "Longmole Spirits",
      invoice: tag,
      item: "Wickerlamp Dry Gin",
      pack: "1 L",
      quantity: 2,
      of: "container",
      priceTotalMinor: 3800,
      by: "Ana",
    },
  ];
}

const batchOf = (tag: string) => ({
  at: AT,
  prep: "Lime Juice",
  made: 1000,
  unit: "ml",
  by: "Rui",
  note: tag,
});

function countOf(tag: string) {
  return {
    count: "Killed count",
    at: AT,
    area: tag,
    item: "Wickerlamp Dry Gin",
    pack: "1 L",
    full: 3,
    parts: [0.5],
    grossG: [],
    amount: null,
    unit: null,
    by: "Ana",
  };
}

/** A till's file: one line a minute, of a ring name that no other file has. */
function tillFile(tag: string, lines: number): string {
  const rows = Array.from({ length: lines }, (_, at) => {
    const [hour, minute] = [17 + (Math.floor(at / 60) % 6), at % 60].map((part) =>
      String(part).padStart(2, "0"),
    );
    return `2026-11-${String(10 + (at % 9)).padStart(2, "0")} ${hour}:${minute}:00,${at},${tag},1,9.50`;
  });
  return `Sold at,Check,Item,Qty,Net\n${rows.join("\n")}\n`;
}

/** Enters something small, as phones do. */
async function enter({ url, model, random }: Send): Promise<void> {
  const which = random.whole(0, 3);
  if (which === 0) {
    const act = model.begin("count", undefined);
    await asked(act, () => post(url, "/api/counts/entries", countOf(act.tag)));
  } else if (which === 1) {
    const act = model.begin("delivery", undefined);
    await asked(act, () => post(url, "/api/deliveries", deliveryOf(act.tag), { "idempotency-key": act.tag }));
  } else if (which === 2) {
    const act = model.begin("batch", undefined);
    await asked(act, () => post(url, "/api/batches", batchOf(act.tag), { "idempotency-key": act.tag }));
  } else {
    const act = model.begin("ring name", undefined);
    const meaning = { ringName: act.tag, soldAs: { kind: "ignore" }, serves: 1, amount: null, unit: null };
    await asked(act, () => post(url, "/api/ring-names", meaning));
  }
}

/** Reads a file in: a short one with the request, a long one in a thread beside the server. */
async function importSales({ url, model, random }: Send): Promise<void> {
  const isLong = random.chance(0.4);
  const lines = isLong ? 4000 + random.whole(0, 2000) : 20 + random.whole(0, 200);
  const act = model.begin("import", undefined, lines);
  const text = tillFile(act.tag, lines);
  if (!isLong) {
    const form = new FormData();
    form.set("file", new File([text], act.tag));
    await asked(act, () =>
      fetch(`${url}/api/sales/import`, { method: "POST", body: form, headers: { origin: url } }),
    );
    return;
  }
  // Begun is not kept: only the end of the job says so.
  const begun = { ...act };
  const job = (await asked(begun, () =>
    fetch(`${url}/api/sales/jobs?name=${act.tag}`, {
      method: "POST",
      body: text,
      headers: { origin: url, "content-type": "text/csv" },
    }),
  )) as { id: string } | undefined;
  while (job !== undefined) {
    const seen = { ...act };
    const now = (await asked(seen, () => fetch(`${url}/api/sales/jobs/${job.id}`))) as
      | { state: string; problems: string[] }
      | undefined;
    if (now === undefined) return;
    if (now.state === "failed") throw new Error(now.problems.join("\n"));
    if (now.state === "done") {
      act.outcome = "kept";
      return;
    }
    await new Promise((resolve) => setTimeout(resolve, 20));
  }
}

/** Takes an import back that is known to be kept and was never taken back before. */
async function undo({ url, model, random }: Send): Promise<void> {
  const open = model.acts.filter(
    ({ kind, outcome, tag }) =>
      kind === "import" &&
      outcome === "kept" &&
      !model.acts.some((other) => other.kind === "undo" && other.tag === tag),
  );
  const chosen = open[random.whole(0, Math.max(0, open.length - 1))];
  if (chosen === undefined) return importSales({ url, model, random });
  const act = model.begin("undo", chosen.tag);
  const found = { ...act };
  const imports = (await asked(found, () => fetch(`${url}/api/sales/imports`))) as
    | { importId: number; file: string }[]
    | undefined;
  const id = imports?.find(({ file }) => file === chosen.tag)?.importId;
  if (imports !== undefined && id === undefined)
    throw new Error(`the kept import ${chosen.tag} is not listed`);
  if (id !== undefined) await asked(act, () => post(url, `/api/sales/imports/${id}/undo`, {}));
}

/** Four people at once until the server is gone. */
export async function useBar(send: Send, isOver: () => boolean): Promise<void> {
  const until = async (act: () => Promise<void>): Promise<void> => {
    while (!isOver()) await act();
  };
  await Promise.all([
    until(() => enter(send)),
    until(() => enter(send)),
    until(() => importSales(send)),
    until(async () => {
      await undo(send);
      await new Promise((resolve) => setTimeout(resolve, 30));
    }),
  ]);
}

const SENT_AGAIN = new Set<Act["kind"]>(["count", "delivery", "batch"]);

/** Sends again, with the same key, what got no answer: it must end as one entry, whether the first was kept or not. */
export async function sendAgain({ url, model }: Send): Promise<void> {
  for (const act of model.acts) {
    if (act.outcome !== "unknown") continue;
    const again = { "idempotency-key": act.tag };
    if (act.kind === "delivery")
      await asked(act, () => post(url, "/api/deliveries", deliveryOf(act.tag), again));
    if (act.kind === "batch") await asked(act, () => post(url, "/api/batches", batchOf(act.tag), again));
    if (act.kind === "count") await asked(act, () => post(url, "/api/counts/entries", countOf(act.tag)));
  }
}

/**
 * Compares a database with what was acknowledged: what was kept is there once and whole, what was refused is not, and what
 * got no answer is there whole or not at all. Acts found to be kept are known to be from then on. Gives what is wrong.
 */
export async function differencesFrom(model: Model, file: string, actsBefore: number): Promise<string[]> {
  const db = openDatabase(file);
  try {
    const wrong = await checkDatabase(db);
    const book = await loadBook(db);
    if (book === undefined) return [...wrong, "there is no book any more"];
    const imports = await listImports(db);
    const groups = await saleGroups(db, { from: "2026-11-01", to: "2026-11-30", splitDates: new Set() });
    const soldOf = (tag: string): number =>
      groups.filter(({ ringName }) => ringName === tag).reduce((sum, { quantity }) => sum + quantity, 0);
    const found = ({ kind, tag }: Act): number => {
      switch (kind) {
        case "count":
          return book.counts.filter(({ area }) => area === tag).length;
        case "delivery":
          return book.deliveries.filter(({ invoice }) => invoice === tag).length;
        case "batch":
          return book.batches.filter(({ note }) => note === tag).length;
        case "ring name":
          return book.ringNames.filter(({ ringName }) => ringName === tag).length;
        case "import":
          return imports.filter(({ file: name }) => name === tag).length;
        case "undo":
          return imports.filter(({ file: name, undoneAt }) => name === tag && undoneAt !== null).length;
      }
    };
    let there = 0;
    for (const act of model.acts) {
      const times = found(act);
      if (times > 1) wrong.push(`${act.kind} ${act.tag} is there ${times} times`);
      if (act.outcome === "kept" && times === 0)
        wrong.push(`${act.kind} ${act.tag} was acknowledged and is lost`);
      if (act.outcome === "refused" && times > 0)
        wrong.push(`${act.kind} ${act.tag} was refused and is there`);
      if (act.outcome === "unknown" && times === 1) act.outcome = "kept";
      // What is not there now and will not be sent again must not turn up later either.
      if (act.outcome === "unknown" && !SENT_AGAIN.has(act.kind)) act.outcome = "refused";
      there += times;
    }
    for (const { kind, tag, lines } of model.acts) {
      if (kind !== "import") continue;
      const one = imports.find(({ file: name }) => name === tag);
      const due = one === undefined || one.undoneAt !== null ? 0 : lines;
      if (soldOf(tag) !== due) wrong.push(`import ${tag} counts ${soldOf(tag)} lines, not ${due}`);
    }
    const { acts } = verifyChain(db);
    if (acts !== actsBefore + there)
      wrong.push(`the history has ${acts - actsBefore} acts, and ${there} were found`);
    return wrong;
  } finally {
    closeDatabase(db);
  }
}

import { z } from "zod";

/** An advisory that is known and borne, why, and until when that holds. */
export const Allowed = z.array(
  z.strictObject({
    id: z.string().regex(/^GHSA(-[a-z0-9]{4}){3}$/),
    package: z.string().min(1),
    reason: z.string().min(20, "Say in a sentence why it does not matter here."),
    until: z.iso.date(),
  }),
);
export type Allowed = z.infer<typeof Allowed>;

/** An advisory as `npm audit --json` gives it (audit report version 2; docs.npmjs.com/cli/commands/npm-audit). */
const Advisory = z.object({
  name: z.string(),
  title: z.string(),
  url: z.string(),
  severity: z.string(),
  range: z.string(),
});
const Report = z.object({
  auditReportVersion: z.literal(2),
  vulnerabilities: z.record(z.string(), z.object({ via: z.array(z.union([z.string(), Advisory])) })),
});
/** What npm prints where the registry answers no such question, or nothing at all. */
const NotAsked = z.object({ message: z.string() }).or(z.object({ error: z.object({ summary: z.string() }) }));

export type Decision = { outcome: "clean" | "found" | "not asked"; lines: string[] };

/**
 * What a report of `npm audit --json` comes to: clean when every advisory is on the list of those borne, and its entry has not
 * run out; found when one is not; not asked when the registry could not be asked, which is no answer either way.
 * Throws when the text is neither: a change of npm must not pass for a clean report.
 */
export function decide(text: string, allowed: Allowed, today: string): Decision {
  const json: unknown = JSON.parse(text);
  const report = Report.safeParse(json);
  if (!report.success) {
    const failed = NotAsked.safeParse(json);
    if (!failed.success) throw new Error(`npm audit printed what is not understood: ${text.slice(0, 300)}`);
    const why = "message" in failed.data ? failed.data.message : failed.data.error.summary;
    return { outcome: "not asked", lines: [`The registry could not be asked for advisories: ${why}`] };
  }
  const advisories = new Map<string, z.infer<typeof Advisory>>();
  for (const { via } of Object.values(report.data.vulnerabilities))
    for (const one of via) if (typeof one !== "string") advisories.set(`${idOf(one.url)} ${one.name}`, one);
  const lines: string[] = [];
  let isClean = true;
  for (const { name, title, url, severity, range } of advisories.values()) {
    const borne = allowed.find((entry) => entry.id === idOf(url) && entry.package === name);
    const told = `${name} ${range}: ${title} (${severity}, ${url})`;
    if (borne !== undefined && borne.until >= today)
      lines.push(`borne until ${borne.until}: ${told}. ${borne.reason}`);
    else {
      isClean = false;
      lines.push(
        borne === undefined ? `not on the list: ${told}` : `the entry ran out on ${borne.until}: ${told}`,
      );
    }
  }
  for (const { id, package: name } of allowed)
    if (!advisories.has(`${id} ${name}`))
      lines.push(`no longer found, so take it off the list: ${id} ${name}`);
  return { outcome: isClean ? "clean" : "found", lines };
}

/** "https://github.com/advisories/GHSA-aaaa-bbbb-cccc" → "GHSA-aaaa-bbbb-cccc" */
function idOf(url: string): string {
  return url.split("/").at(-1) ?? url;
}

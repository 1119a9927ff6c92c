import { readFileSync } from "node:fs";
import { join } from "node:path";
import { describe, expect, it } from "vitest";
import { Allowed, decide } from "#tests/audit/decide.ts";

const TODAY = "2026-11-25";

/** As `npm audit --json` prints it, with invented packages. */
function report(...found: { name: string; id: string; severity?: string }[]): string {
  const vulnerabilities = Object.fromEntries(
    found.map(({ name, id, severity = "high" }, at) => [
      name,
      {
        name,
        severity,
        isDirect: false,
        via: [
          {
            source: at,
            name,
            dependency: name,
            title: "Parses for ever",
            url: `https://github.com/advisories/${id}`,
            severity,
            range: "<2.0.1",
          },
          "another-package",
        ],
        effects: [],
        nodes: [`node_modules/${name}`],
        fixAvailable: true,
      },
    ]),
  );
  return JSON.stringify({ auditReportVersion: 2, vulnerabilities, metadata: {} });
}

const BORNE: Allowed = [
  {
    id: "GHSA-aaaa-bbbb-cccc",
    package: "shaker",
    reason: "Only read at build time, from files of our own.",
    until: "2026-12-31",
  },
];

describe("the audit of dependencies", () => {
  it("is clean without advisories", () => {
    expect(decide(report(), [], TODAY)).toEqual({ outcome: "clean", lines: [] });
  });

  it("finds an advisory, and says which and where to read of it", () => {
    const { outcome, lines } = decide(report({ name: "shaker", id: "GHSA-aaaa-bbbb-cccc" }), [], TODAY);
    expect(outcome).toBe("found");
    expect(lines).toEqual([
      "not on the list: shaker <2.0.1: Parses for ever (high, https://github.com/advisories/GHSA-aaaa-bbbb-cccc)",
    ]);
  });

  it("bears one that is on the list until its day, and no longer", () => {
    const text = report({ name: "shaker", id: "GHSA-aaaa-bbbb-cccc" });
    expect(decide(text, BORNE, "2026-12-31")).toMatchObject({ outcome: "clean" });
    expect(decide(text, BORNE, "2027-01-01")).toMatchObject({
      outcome: "found",
      lines: [expect.stringContaining("ran out")],
    });
  });

  it("takes an entry for nothing but its own advisory and package", () => {
    for (const other of [
      { name: "shaker", id: "GHSA-aaaa-bbbb-dddd" },
      { name: "strainer", id: "GHSA-aaaa-bbbb-cccc" },
      { name: "shaker", id: "GHSA-aaaa-bbbb-dddd", severity: "low" },
    ])
      expect(decide(report(other), BORNE, TODAY).outcome).toBe("found");
  });

  it("names entries of the list that nothing needs any more", () => {
    expect(decide(report(), BORNE, TODAY)).toEqual({
      outcome: "clean",
      lines: [expect.stringContaining("take it off the list: GHSA-aaaa-bbbb-cccc shaker")],
    });
  });

  it.each([
    // As a registry answers that knows packages but no advisories.
    {
      message: "405 Method Not Allowed - POST https://registry.example/-/npm/v1/security/advisories/bulk",
      method: "POST",
      statusCode: 405,
      body: "",
      error: { summary: "", detail: "" },
    },
    { error: { code: "ENETUNREACH", summary: "request to https://registry.example failed", detail: "" } },
  ])("says plainly that it could not ask, which is neither clean nor found", (answer) => {
    const { outcome, lines } = decide(JSON.stringify(answer), [], TODAY);
    expect(outcome).toBe("not asked");
    expect(lines.join()).toMatch(/could not be asked.*(405|request to)/);
  });

  it.each(["{}", "[]", '{"auditReportVersion": 3, "vulnerabilities": {}}', '{"vulnerabilities": {}}'])(
    "takes what it does not understand for no clean report: %s",
    (text) => expect(() => decide(text, [], TODAY)).toThrow(),
  );

  it("has a list whose every entry has a reason and a day", () => {
    const text = readFileSync(join(import.meta.dirname, "allowed.json"), "utf8");
    expect(() => Allowed.parse(JSON.parse(text))).not.toThrow();
    expect(
      Allowed.safeParse([
        { id: "GHSA-aaaa-bbbb-cccc", package: "shaker", reason: "fine", until: "2026-12-31" },
      ]).success,
    ).toBe(false);
  });
});

import { createHash } from "node:crypto";
import { readFileSync } from "node:fs";
import { createRequire } from "node:module";
import { dirname, join } from "node:path";
import { afterAll, describe, expect, it } from "vitest";
import { closeDatabase, IN_MEMORY, openDatabase } from "#db/open.ts";
import { createApp } from "#server/app.ts";
import { DEMO_OWNER } from "#server/people/actor.ts";

const db = openDatabase(IN_MEMORY);
afterAll(() => closeDatabase(db));
const app = createApp({
  db,
  now: () => new Date("2026-03-09T12:00:00Z"),
  webFolder: "/nowhere",
  signIn: { openAs: DEMO_OWNER },
});

/** The directives of a policy by name. */
function policyOf(response: Response): Map<string, string[]> {
  const text = response.headers.get("content-security-policy") ?? "";
  return new Map(
    text.split(";").map((directive) => {
      const [name = "", ...sources] = directive.trim().split(/\s+/);
      return [name, sources];
    }),
  );
}

const ANSWERS = [
  ["a screen", "/", 503],
  ["an answer", "/api/openapi.json", 200],
  ["a refusal", "/api/nothing-here", 404],
  ["a fault of the request", "/api/venue", 404],
] as const;

// The values are those of the OWASP Secure Headers Project and the Content Security Policy Cheat Sheet.
describe.each(ANSWERS)("on %s", (_, path, status) => {
  it("the browser is told to run nothing that is not ours", async () => {
    const response = await app.request(path);
    expect(response.status).toBe(status);
    const policy = policyOf(response);
    expect(policy.get("default-src")).toEqual(["'none'"]);
    expect(policy.get("script-src")).toEqual(["'self'", "'wasm-unsafe-eval'"]);
    expect(policy.get("frame-ancestors")).toEqual(["'none'"]);
    expect(policy.get("base-uri")).toEqual(["'none'"]);
    expect(policy.get("object-src")).toEqual(["'none'"]);
    expect(
      [...policy.values()].flat().filter((source) => /unsafe-(inline|eval|hashes)|^https?:|\*/.test(source)),
    ).toEqual(
      // WebAssembly's own word holds the other one.
      ["'wasm-unsafe-eval'"],
    );
  });

  it("it neither guesses types nor tells where it comes from, and lends only the camera", async () => {
    const { headers } = await app.request(path);
    expect(headers.get("x-content-type-options")).toBe("nosniff");
    expect(headers.get("referrer-policy")).toBe("no-referrer");
    expect(headers.get("x-frame-options")).toBe("DENY");
    const permissions = headers.get("permissions-policy") ?? "";
    expect(permissions).toContain("camera=(self)");
    expect(permissions).toContain("microphone=()");
    expect(permissions).toContain("geolocation=()");
  });

  it("HTTPS is asked for from now on where it is spoken, and only there", async () => {
    const plain = await app.request(`http://localhost${path}`);
    expect(plain.headers.get("strict-transport-security")).toBeNull();
    const secured = await app.request(`https://localhost${path}`);
    expect(secured.headers.get("strict-transport-security")).toMatch(/^max-age=\d{7,}$/);
  });
});

it("the page itself holds no script and no style, so that none needs to be allowed", () => {
  const page = readFileSync(join(import.meta.dirname, "../../web/index.html"), "utf8");
  expect(page).not.toMatch(/<script(?![^>]*\ssrc=)[^>]*>/i);
  expect(page).not.toMatch(/<style|\sstyle=|\son\w+=|javascript:/i);
});

it("the styles allowed by digest are those that react-aria puts into the page", async () => {
  const styles = policyOf(await app.request("/")).get("style-src") ?? [];
  const main = createRequire(import.meta.url).resolve("react-aria");
  const folder = main.slice(0, main.lastIndexOf("react-aria") + "react-aria".length);
  for (const file of ["overlays/usePreventScroll.mjs", "interactions/usePress.mjs"]) {
    const source = readFileSync(join(folder, "dist/private", file), "utf8");
    const written = /textContent = `([^`]*@layer[^`]*)`\.trim\(\)/.exec(source)?.[1] ?? "";
    const style = written.replace(/\$\{[^}]*ATTRIBUTE\}/, "data-react-aria-pressable").trim();
    const digest = createHash("sha256").update(style).digest("base64");
    expect(styles, `${file} of ${dirname(main)}`).toContain(`'sha256-${digest}'`);
  }
});

import { hostname } from "node:os";
import { describe, expect, it } from "vitest";
import { isOurHost } from "#server/doors/host.ts";
import { aTestApp } from "#tests/support/test-app.ts";

const HERE = { listensHere: true, isSecured: false, names: [] };
const BAR = { listensHere: false, isSecured: false, names: [] };

describe("on this machine alone", () => {
  it.each([
    "localhost",
    "localhost:4680",
    "LOCALHOST:1",
    "127.0.0.1:4680",
    "127.8.8.8",
    "[::1]:4680",
    "ullage.localhost",
    "localhost.",
  ])("%s is the server's own name", (host) => expect(isOurHost(host, HERE)).toBe(true));

  // A page of another site whose name is pointed at 127.0.0.1 after it was loaded: DNS rebinding.
  it.each([
    undefined,
    "",
    "bar.attacker.example:4680",
    "localhost.attacker.example",
    "127.0.0.1.attacker.example",
    "192.168.1.20:4680",
    "0.0.0.0:4680",
    "[fe80::1]",
    "localhost:4680, attacker.example",
    "localhost@attacker.example",
    "localhost:80:80",
    hostname().toLowerCase() === "localhost" ? "other" : hostname(),
  ])("%s is not", (host) => expect(isOurHost(host, HERE)).toBe(false));

  it("takes a name that it was started with, as behind a proxy", () => {
    const behind = { ...HERE, names: ["bar.example"] };
    expect(isOurHost("Bar.Example:443", behind)).toBe(true);
    expect(isOurHost("other.example", behind)).toBe(false);
  });
});

describe("on the bar's network", () => {
  it("takes any address and the machine's own name, and no stranger's", () => {
    expect(isOurHost("192.168.1.20:4680", BAR)).toBe(true);
    expect(isOurHost(`${hostname()}:4680`, BAR)).toBe(true);
    expect(isOurHost("bar.attacker.example", BAR)).toBe(false);
  });

  it("over HTTPS the certificate says the name", () => {
    expect(isOurHost("ullage.internal", { ...BAR, isSecured: true })).toBe(true);
  });
});

it("whoever asks by another name gets nothing, the page included", async () => {
  const { raw } = await aTestApp();
  for (const path of ["/", "/api/week", "/api/openapi.json"]) {
    const response = await raw(`http://bar.attacker.example${path}`);
    expect(response.status).toBe(421);
    expect(await response.json()).toEqual({
      problems: [{ field: "", message: expect.stringContaining("does not answer to that name") }],
    });
  }
});

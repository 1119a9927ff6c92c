import type { Page } from "playwright-core";
import type { Role } from "#server/people/actor.ts";
import { type OpenBar, settled } from "./support.ts";

export const PASSWORD = "three bent corkscrews";
export const PIN = "7392";

type Somebody = { name: string; role: Role };

/** A one-time link, as printed or shown. */
export function linkIn(text: string): string {
  return /http:\/\/\S+\/welcome#\S+/.exec(text)?.[0] ?? "no link";
}

/** Adds somebody at the terminal and gives the link to hand over, with the address that the bar is served under. */
function invite(bar: OpenBar, { name, role }: Somebody): string {
  return `${bar.url}/welcome${new URL(linkIn(bar.ullage("people", "add", name, "--role", role))).hash}`;
}

/**
 * Makes the page's device one of the bar's own, on which a PIN counts, by a manager who is new, signs in there and out
 * again. By requests alone: how it is done by hand stands in sign-in.test.ts.
 */
export async function enrol(page: Page, bar: OpenBar, manager: Somebody & { role: "manager" }) {
  const link = new URL(invite(bar, manager)).hash.slice(1);
  await page.goto(bar.url);
  const answers = await page.evaluate(
    async ({ asked }) => {
      const states: number[] = [];
      for (const [path, body] of asked) {
        const answer = await fetch(`/api/${path}`, {
          method: "POST",
          headers: { "content-type": "application/json" },
          body: JSON.stringify(body),
        });
        states.push(answer.status);
      }
      return states;
    },
    {
      asked: [
        ["sign-in/link", { link, secret: PASSWORD }],
        ["devices", { name: "Bar device" }],
        ["sign-in/out", {}],
      ] as const,
    },
  );
  if (answers.some((status) => status !== 200)) throw new Error(`Enrolling was answered with ${answers}.`);
}

/** Invites somebody, who opens the link on an enrolled device and chooses a PIN. */
export async function beginWithPin(page: Page, bar: OpenBar, somebody: Somebody): Promise<void> {
  await page.goto(invite(bar, somebody));
  await settled(page, `Welcome, ${somebody.name}`);
  await page.getByLabel("New PIN").fill(PIN);
  await page.getByRole("button", { name: "Set the PIN" }).click();
  await page.getByRole("heading", { name: "This week" }).waitFor();
}

/** Signs in with a name and a password, as everywhere but on the bar's own devices. */
export async function signIn(page: Page, bar: OpenBar, { name }: { name: string }): Promise<void> {
  await page.goto(bar.url);
  await settled(page, "Sign in");
  await page.getByLabel("Name").fill(name);
  await page.getByLabel("Password").fill(PASSWORD);
  await page.keyboard.press("Enter");
  await page.getByRole("heading", { name: "This week" }).waitFor();
}

import type { Context, MiddlewareHandler } from "hono";
import { matchedRoutes } from "hono/route";
import { actingAs } from "#db/history/acting.ts";
import { type Actor, actingOf, type Visitor } from "#server/people/actor.ts";
import type { Door } from "#server/people/door.ts";
import { isFromOwnPages } from "#server/people/own-site.ts";
import { may, type Rule, ruleOf } from "#server/people/permissions.ts";
import { redacted } from "#server/people/redact.ts";
import { notAllowed, notSignedIn } from "#server/people/refusal.ts";
import { visitorOf } from "#server/people/visitor.ts";

/**
 * Stands before every route of the API: finds out who asks, lets through what the table of permissions allows, acts on
 * their behalf, and empties what their role does not see. `openAs` is who is signed in without asking; null asks.
 */
export function guard(door: Door, openAs: Actor | null): MiddlewareHandler {
  return async (c, next) => {
    const visitor = await visitorOf(c, door, openAs);
    c.set("visitor", visitor);
    // What a person sees must not be left in a shared device's cache.
    c.header("cache-control", "no-store");
    refuseOtherSites(c, visitor);
    const rule = ruleHere(c);
    if (rule?.may === "anyone") return next();
    const { actor } = visitor;
    if (actor === null) throw notSignedIn("Sign in to go on.");
    c.set("actor", actor);
    if (rule !== undefined) refuseBeyond(rule, actor, visitor.readsOnly && !isReading(c, rule));
    await actingAs(actingOf(actor, visitor.device), next);
    if (rule !== undefined) await redact(c, rule, actor);
  };
}

/** The rule of the route that will answer; undefined where none will. Throws 403 for a route that nobody thought of. */
function ruleHere(c: Context): Rule | undefined {
  const route = matchedRoutes(c).find(({ method, path }) => method !== "ALL" && !path.includes("*"));
  if (route === undefined) return undefined;
  const rule = ruleOf(route.method, route.path);
  if (rule === undefined)
    throw notAllowed(`${route.method} ${route.path} has no rule saying who may call it.`);
  return rule;
}

function refuseBeyond(rule: Rule, actor: Actor, isWritingUnasked: boolean): void {
  if (rule.inPerson === true && actor.via === "token") {
    throw notAllowed("This takes a person who signed in; no token can do it.");
  }
  if (isWritingUnasked) throw notAllowed(`The token ${actor.name} may only read.`);
  if (rule.may !== "anyone" && !rule.may.includes(actor.role)) {
    throw notAllowed(`${actor.name} is signed in as ${actor.role}, and that role may not do this.`);
  }
}

function isReading(c: Context, rule: Rule): boolean {
  return c.req.method === "GET" || c.req.method === "HEAD" || rule.readsOnly === true;
}

function refuseOtherSites(c: Context, { sessionId, actor }: Visitor): void {
  if (actor?.via === "token") return;
  if (isFromOwnPages(c, { hasCookie: sessionId !== null })) return;
  throw notAllowed(
    "This came from another site's page, or from a program without a token; nothing was changed.",
  );
}

async function redact(c: Context, rule: Rule, actor: Actor): Promise<void> {
  const costs = may(actor.role, "seeCosts") ? [] : (rule.costs ?? []);
  const machine = may(actor.role, "runBar") ? [] : (rule.machine ?? []);
  const names = may(actor.role, "seeNames") ? [] : (rule.names ?? []);
  const emptied = [...costs, ...machine];
  if ((emptied.length === 0 && names.length === 0) || !c.res.ok) return;
  const answer: unknown = await c.res.json();
  c.res = c.json(redacted(answer, { emptied, names, ownName: actor.name }));
}

import type { Hono } from "hono";
import { generateSpecs } from "hono-openapi";
import { type Rule, ruleOf } from "#server/people/permissions.ts";
import { PROGRAM_VERSION } from "#server/version.ts";

/** The OpenAPI 3.1 document of the routes. */
export async function apiDocument(app: Hono) {
  const document = await generateSpecs(app, {
    documentation: {
      openapi: "3.1.0",
      info: {
        title: "Ullage",
        version: PROGRAM_VERSION,
        description: "What the screens and the command line use.",
      },
      components: {
        securitySchemes: {
          token: { type: "http", scheme: "bearer" },
          session: { type: "apiKey", in: "cookie", name: "ullage-session" },
        },
      },
    },
  });
  for (const [path, methods] of Object.entries(document.paths ?? {})) {
    for (const [method, operation] of Object.entries(methods ?? {})) {
      if (typeof operation !== "object" || !("responses" in operation)) continue;
      // The generator adds the answer its own validator would give; ours is 422, and documented as that.
      delete operation.responses?.["400"];
      Object.assign(operation, whoMayCall(ruleOf(method.toUpperCase(), path), operation.responses));
    }
  }
  return document;
}

/** What the table of permissions says of a route, in the document's words. */
function whoMayCall(rule: Rule | undefined, responses: object | undefined) {
  if (rule === undefined || rule.may === "anyone") return { security: [] };
  return {
    "x-roles": rule.may,
    security: [{ session: [] }, ...(rule.inPerson === true ? [] : [{ token: [] }])],
    responses: {
      ...responses,
      401: { description: "Nobody is signed in" },
      403: { description: "Not for this role, or not for a token; nothing was changed" },
    },
  };
}

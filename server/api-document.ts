import type { Hono } from "hono";
import { generateSpecs } from "hono-openapi";

/** The OpenAPI 3.1 document of the routes. */
export async function apiDocument(app: Hono) {
  const document = await generateSpecs(app, {
    documentation: {
      openapi: "3.1.0",
      info: { title: "Ullage", version: "0.1.0", description: "What the screens and the command line use." },
    },
  });
  for (const methods of Object.values(document.paths ?? {})) {
    for (const operation of Object.values(methods ?? {})) {
      // The generator adds the answer its own validator would give; ours is 422, and documented as that.
      if (typeof operation === "object" && "responses" in operation) delete operation.responses?.["400"];
    }
  }
  return document;
}

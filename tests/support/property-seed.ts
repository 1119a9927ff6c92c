import fc from "fast-check";

/**
 * Properties run from one seed, so that a run that passes here passes anywhere. Look further with
 * `ULLAGE_SEED=random npm run test:unit`, and keep what it finds as an example.
 */
const asked = process.env.ULLAGE_SEED;
if (asked !== "random") fc.configureGlobal({ seed: asked ? Number(asked) : 20260302 });

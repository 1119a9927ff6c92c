import type { MiddlewareHandler } from "hono";
import { secureHeaders } from "hono/secure-headers";

/**
 * Styles that packages put into the page by script; each is allowed by its digest, as the page itself holds none. A browser
 * test fails when a package changes one, and the browser's message then names the new digest.
 */
const STYLES_OF_PACKAGES = [
  // react-aria: presses neither scroll nor zoom by a double tap; what lies under a dialog does not scroll.
  "'sha256-38RhXrc7EdReTKsOm23ZPOCUgniTUUcjky8QOOrQx6o='",
  "'sha256-gYiS/BvZvRcK27JIXTuwhZ3hs2+VJ1X+2gUlE+farlg='",
  // Observable Plot: the look of a chart.
  "'sha256-po1X/Tzm0Ml06k5rovAtw7FhoXN1na5hY1Nfl3YDpnA='",
] as const;

/** Half a year: long enough that a phone asks by HTTPS alone, short enough that giving HTTPS up locks nobody out for ever. */
const HTTPS_ALONE = "max-age=15552000";

const PERMITTED_HERE_ALONE = ["camera", "clipboard-write"] as const;
const NEVER_NEEDED = [
  "accelerometer",
  "autoplay",
  "bluetooth",
  "display-capture",
  "geolocation",
  "gyroscope",
  "hid",
  "magnetometer",
  "microphone",
  "midi",
  "payment",
  "serial",
  "usb",
] as const;

const PERMISSIONS = [
  ...PERMITTED_HERE_ALONE.map((power) => `${power}=(self)`),
  ...NEVER_NEEDED.map((power) => `${power}=()`),
].join(", ");

/**
 * What the browser is told to refuse (OWASP Secure Headers Project): any script, style or frame that is not ours, guesses at
 * what a file is, names of our pages to other sites, every device but the camera, which reads barcodes.
 */
export function safeHeaders(): MiddlewareHandler {
  const always = secureHeaders({
    contentSecurityPolicy: {
      defaultSrc: ["'none'"],
      // The reader of barcodes for browsers without their own is WebAssembly; text never becomes code.
      scriptSrc: ["'self'", "'wasm-unsafe-eval'"],
      styleSrc: ["'self'", ...STYLES_OF_PACKAGES],
      imgSrc: ["'self'", "data:", "blob:"],
      fontSrc: ["'self'"],
      connectSrc: ["'self'"],
      mediaSrc: ["'self'", "blob:"],
      manifestSrc: ["'self'"],
      workerSrc: ["'self'"],
      formAction: ["'self'"],
      frameAncestors: ["'none'"],
      baseUri: ["'none'"],
      objectSrc: ["'none'"],
    },
    xFrameOptions: "DENY",
    xContentTypeOptions: "nosniff",
    referrerPolicy: "no-referrer",
    crossOriginOpenerPolicy: "same-origin",
    crossOriginResourcePolicy: "same-origin",
    strictTransportSecurity: false,
  });
  return async (c, next) => {
    await always(c, next);
    c.res.headers.set("permissions-policy", PERMISSIONS);
    if (new URL(c.req.url).protocol === "https:") c.res.headers.set("strict-transport-security", HTTPS_ALONE);
  };
}

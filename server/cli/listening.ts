import { readFileSync } from "node:fs";
import { createSecureContext } from "node:tls";
import { isThisMachine } from "#server/doors/host.ts";
import { InputError } from "#server/input-error.ts";
import type { Tls } from "#server/serve.ts";

/** How `serve` was asked to listen. */
export type ListenOptions = {
  port?: string;
  host?: string;
  tlsCert?: string;
  tlsKey?: string;
  insecureHttp?: boolean;
  /** Further names it is asked for by, as behind a proxy. */
  name?: string[];
};

/**
 * Where to listen, and with which certificate. Throws InputError when a file cannot be used, and when others on the
 * network could read along: an address other than this machine's own needs HTTPS, or to be asked for without.
 */
export function readListening({
  port,
  host = "127.0.0.1",
  tlsCert,
  tlsKey,
  insecureHttp,
  name: names = [],
}: ListenOptions) {
  const tls = readTls(tlsCert, tlsKey);
  if (tls === null && !isThisMachine(host) && insecureHttp !== true) {
    throw new InputError(
      `--host ${host} lets other devices in, and without HTTPS anyone on the network can read and change what they send; ` +
        "phones also refuse to keep the count offline. Give --tls-cert and --tls-key (README, Phones), or, on a network " +
        "you trust, --insecure-http.",
    );
  }
  return { port: readPort(port), host, tls, names };
}

function readTls(certFile: string | undefined, keyFile: string | undefined): Tls | null {
  if (certFile === undefined && keyFile === undefined) return null;
  if (certFile === undefined || keyFile === undefined) {
    throw new InputError(
      "--tls-cert and --tls-key belong together: give the certificate and its private key.",
    );
  }
  const tls = { cert: readPem("--tls-cert", certFile), key: readPem("--tls-key", keyFile) };
  try {
    createSecureContext(tls);
  } catch {
    throw new InputError(
      `${certFile} and ${keyFile} are no certificate with its private key, both as PEM; see that they belong together.`,
    );
  }
  return tls;
}

function readPem(option: string, file: string): string {
  try {
    return readFileSync(file, "utf8");
  } catch {
    throw new InputError(`${option}: ${file} cannot be read; see that it exists and that you may read it.`);
  }
}

function readPort(text = "4680"): number {
  const port = Number(text);
  if (!Number.isInteger(port) || port < 0 || port > 65_535) {
    throw new InputError(`--port: "${text}" is no port; write a number from 0 to 65535.`);
  }
  return port;
}

import { connect, createServer, type Socket } from "node:net";

/** A network of its own between a phone and the bar, by the address under which the phone finds the bar there. */
export type Network = { url: string; cut: () => void; mend: () => void; close: () => void };

/** The browser's own switch lets through what a page asks while it is being loaded again; a network that is cut does not. */
export async function networkTo(bar: { url: string }): Promise<Network> {
  const { hostname, port } = new URL(bar.url);
  const open = new Set<Socket>();
  let isCut = false;
  const relay = createServer((near) => {
    const far = connect(Number(port), hostname);
    join(near, far);
    join(far, near);
    if (isCut) near.destroy();
  });
  const join = (from: Socket, to: Socket) => {
    open.add(from);
    from.pipe(to);
    from.on("error", () => to.destroy());
    from.on("close", () => {
      open.delete(from);
      to.destroy();
    });
  };
  const cutAll = () => {
    for (const socket of open) socket.destroy();
  };
  await new Promise<void>((resolve) => relay.listen(0, hostname, resolve));
  const own = relay.address();
  if (own === null || typeof own === "string") throw new Error("The network has no port.");
  return {
    url: `http://${hostname}:${own.port}`,
    cut: () => {
      isCut = true;
      cutAll();
    },
    mend: () => {
      isCut = false;
    },
    close: () => {
      relay.close();
      cutAll();
    },
  };
}

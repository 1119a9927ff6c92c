/** Shows how far a long piece of work is, on a terminal only; wiped when done. */
export function progress(label: string): { step: (text: string) => void; done: () => void } {
  const stream = process.stderr;
  if (!stream.isTTY) return { step: () => undefined, done: () => undefined };
  return {
    step: (text) => stream.write(`\r\u001b[2K${label} ${text}`),
    done: () => stream.write("\r\u001b[2K"),
  };
}

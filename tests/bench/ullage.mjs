// The compiled program as it is installed, without the look for stale sources that a checkout begins with.
const { main } = await import("../../dist/bundle/main.js");
await main(process.argv.slice(2));

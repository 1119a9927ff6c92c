// Loaded into every measured process: at its end it says on standard error how much memory and processor time it took.
process.on("exit", () => {
  const { maxRSS } = process.resourceUsage();
  const { user, system } = process.cpuUsage();
  process.stderr.write(`${JSON.stringify({ maxRssMb: maxRSS / 1024, cpuMs: (user + system) / 1000 })}\n`);
});

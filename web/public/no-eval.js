// The server forbids code made from text (its content security policy); zod is told so before it would try.
globalThis.__zod_globalConfig = { jitless: true };

import type { Plugin } from "vite";
import { messageFiles, moduleOf, type Part } from "./compile.ts";

const NAME = /^virtual:texts\/(\w+)\/(first|rest)$/;

/** Makes the catalogue's ICU messages into functions when the screens are built, so that no reader of messages is shipped. */
export function texts(): Plugin {
  return {
    name: "ullage-texts",
    resolveId: (id) => (NAME.test(id) ? `\0${id}.js` : undefined),
    load(id) {
      const [, language, part] = NAME.exec(id.replace(/^\0|\.js$/g, "")) ?? [];
      if (language === undefined || !id.startsWith("\0")) return undefined;
      for (const file of messageFiles(language)) this.addWatchFile(file);
      return moduleOf(language, part as Part);
    },
  };
}

/// <reference types="vite/client" />

declare module "@fontsource-variable/literata/opsz.css";

declare module "virtual:texts/*" {
  const texts: import("./texts/say.ts").Texts;
  export default texts;
}

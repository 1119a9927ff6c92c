import { useState } from "react";
import { say } from "../texts/say.ts";
import { ShellIcon } from "./ShellIcon.tsx";
import { savedTheme, saveTheme, type Theme } from "./theme.ts";

const NEXT: Record<Theme, Theme> = { system: "light", light: "dark", dark: "system" };
const WORDS = { system: "shell.lookSystem", light: "shell.lookLight", dark: "shell.lookDark" } as const;

/** Steps through the three looks; its name says which one is on. */
export function ThemeSwitch() {
  const [theme, setTheme] = useState(savedTheme);
  const step = () => {
    const next = NEXT[theme];
    saveTheme(next);
    setTheme(next);
  };
  return (
    <button type="button" className="theme-switch" onClick={step}>
      <ShellIcon name={theme} size={20} />
      <span className="theme-words">{say("shell.look", { theme: say(WORDS[theme]) })}</span>
    </button>
  );
}

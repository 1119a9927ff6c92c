import { useState } from "react";
import { ShellIcon } from "./ShellIcon.tsx";
import { savedTheme, saveTheme, type Theme } from "./theme.ts";

const NEXT: Record<Theme, Theme> = { system: "light", light: "dark", dark: "system" };
const WORDS: Record<Theme, string> = { system: "as the device", light: "paper", dark: "dim bar" };

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
      <span className="theme-words">Look: {WORDS[theme]}</span>
    </button>
  );
}

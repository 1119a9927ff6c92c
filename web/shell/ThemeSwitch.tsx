import { Moon, Sun, SunMoon } from "lucide-react";
import { useState } from "react";
import { savedTheme, saveTheme, type Theme } from "./theme.ts";

const NEXT: Record<Theme, Theme> = { system: "light", light: "dark", dark: "system" };
const WORDS: Record<Theme, string> = { system: "as the device", light: "paper", dark: "dim bar" };
const ICONS = { system: SunMoon, light: Sun, dark: Moon };

/** Steps through the three looks; its name says which one is on. */
export function ThemeSwitch() {
  const [theme, setTheme] = useState(savedTheme);
  const Icon = ICONS[theme];
  const step = () => {
    const next = NEXT[theme];
    saveTheme(next);
    setTheme(next);
  };
  return (
    <button type="button" className="theme-switch" onClick={step}>
      <Icon aria-hidden="true" size={20} strokeWidth={1.6} />
      <span className="theme-words">Look: {WORDS[theme]}</span>
    </button>
  );
}

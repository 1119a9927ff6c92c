/** Paper by day, dim bar at night, or as the device says. */
export type Theme = "system" | "light" | "dark";

const KEY = "ullage-theme";

/** The theme this device was last set to. */
export function savedTheme(): Theme {
  const saved = localStorage.getItem(KEY);
  return saved === "light" || saved === "dark" ? saved : "system";
}

export function saveTheme(theme: Theme): void {
  localStorage.setItem(KEY, theme);
  applyTheme(theme);
}

export function applyTheme(theme: Theme): void {
  const { documentElement: html } = document;
  if (theme === "system") delete html.dataset.theme;
  else html.dataset.theme = theme;
}

import type { Fits } from "./label-pages.ts";
import type { LabelStock } from "./label-settings.ts";

/** Measures on a real label of a stock, laid out off the screen in its true size; `done` takes it away again. */
export function measuringLabel(stock: LabelStock): { fits: Fits; done: () => void } {
  const sheet = document.createElement("div");
  sheet.className = `label-sheet labels-${stock}`;
  sheet.ariaHidden = "true";
  const label = document.createElement("div");
  label.className = "label";
  sheet.append(label);
  document.body.append(sheet);
  return {
    fits: (lines, sizePt) => {
      label.style.fontSize = `${sizePt}pt`;
      label.replaceChildren(...lines.map(lineElement));
      return label.scrollHeight <= label.clientHeight && label.scrollWidth <= label.clientWidth;
    },
    done: () => sheet.remove(),
  };
}

function lineElement(text: string, index: number): HTMLElement {
  const line = document.createElement(index === 0 ? "strong" : "span");
  line.textContent = text;
  return line;
}

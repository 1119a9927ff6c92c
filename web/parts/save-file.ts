/** Hands cells to the person as a CSV file: UTF-8 with a byte order mark, which spreadsheets need to see umlauts. */
export async function saveCsv(name: string, cells: readonly string[][]): Promise<void> {
  const { default: Papa } = await import("papaparse");
  saveText(`${name}.csv`, `\uFEFF${Papa.unparse([...cells])}`, "text/csv;charset=utf-8");
}

/** Hands a text to the person as a file. */
export function saveText(name: string, text: string, type = "text/plain;charset=utf-8"): void {
  const url = URL.createObjectURL(new Blob([text], { type }));
  const link = document.createElement("a");
  link.href = url;
  link.download = name;
  link.click();
  URL.revokeObjectURL(url);
}

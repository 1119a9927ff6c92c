import type { BarcodeDetector as ReaderClass } from "barcode-detector/ponyfill";

export type BarcodeReader = Pick<InstanceType<typeof ReaderClass>, "detect">;

/** The codes on what a bar buys: bottles (EAN-13, UPC-A), small packs (EAN-8) and cases (ITF-14). */
const FORMATS = ["ean_13", "ean_8", "upc_a", "itf"] as const;

/** The browser's own reader of barcodes, or where it has none one in WebAssembly, fetched from this server when first used. */
export async function barcodeReader(): Promise<BarcodeReader> {
  const { BarcodeDetector: Own } = globalThis as { BarcodeDetector?: typeof ReaderClass };
  const known: readonly string[] = Own === undefined ? [] : await Own.getSupportedFormats();
  const own = FORMATS.filter((format) => known.includes(format));
  if (Own !== undefined && own.includes("ean_13")) return new Own({ formats: own });
  const [{ BarcodeDetector, prepareZXingModule }, { default: wasm }] = await Promise.all([
    import("barcode-detector/ponyfill"),
    import("zxing-wasm/reader/zxing_reader.wasm?url"),
  ]);
  prepareZXingModule({ overrides: { locateFile: () => wasm } });
  return new BarcodeDetector({ formats: [...FORMATS] });
}

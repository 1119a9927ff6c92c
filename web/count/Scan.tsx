import { useEffect, useRef, useState } from "react";
import { gtin14 } from "#engine/measure/gtin.ts";
import { Button } from "../parts/Button.tsx";

/** The browser's own reader of barcodes, where it has one; TypeScript does not know it yet. */
type Reader = { detect: (from: HTMLVideoElement) => Promise<{ rawValue: string }[]> };
type ReaderClass = new (options: { formats: string[] }) => Reader;

const FORMATS = ["ean_13", "ean_8", "upc_a", "itf"];
const LOOK_EVERY_MS = 150;

type Props = { onCode: (code: string) => void; onClose: () => void };

/** Reads the barcode held before the camera. The picture stays on the device. */
export function Scan({ onCode, onClose }: Props) {
  const video = useRef<HTMLVideoElement>(null);
  const [problem, setProblem] = useState<string | null>(null);
  const found = useRef(onCode);
  found.current = onCode;
  useEffect(() => {
    const Detector = (globalThis as unknown as { BarcodeDetector: ReaderClass }).BarcodeDetector;
    const reader = new Detector({ formats: FORMATS });
    let stream: MediaStream | undefined;
    let timer: ReturnType<typeof setTimeout> | undefined;
    let isOver = false;
    const look = async () => {
      const codes = video.current === null ? [] : await reader.detect(video.current).catch(() => []);
      if (isOver) return;
      const code = codes.map(({ rawValue }) => rawValue).find((text) => gtin14(text) !== undefined);
      if (code === undefined) timer = setTimeout(() => void look(), LOOK_EVERY_MS);
      else found.current(code);
    };
    const begin = async () => {
      stream = await navigator.mediaDevices.getUserMedia({ video: { facingMode: "environment" } });
      if (isOver || video.current === null) return stop(stream);
      video.current.srcObject = stream;
      await video.current.play();
      await look();
    };
    begin().catch(() => setProblem("The camera was not given. Type the number under the bars instead."));
    return () => {
      isOver = true;
      clearTimeout(timer);
      if (stream !== undefined) stop(stream);
    };
  }, []);
  return (
    <div className="count-scan">
      {problem === null ? <video ref={video} muted playsInline /> : <p role="alert">{problem}</p>}
      <Button onClick={onClose}>Stop scanning</Button>
    </div>
  );
}

function stop(stream: MediaStream): void {
  for (const track of stream.getTracks()) track.stop();
}

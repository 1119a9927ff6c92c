import { useEffect, useRef, useState } from "react";
import { gtin14 } from "#engine/measure/gtin.ts";
import { Button } from "../parts/Button.tsx";
import { barcodeReader } from "./barcode-reader.ts";

const LOOK_EVERY_MS = 150;

type Props = { onCode: (code: string) => void; onClose: () => void };

/** Reads the barcode held before the camera. The picture stays on the device. */
export function Scan({ onCode, onClose }: Props) {
  const video = useRef<HTMLVideoElement>(null);
  const [problem, setProblem] = useState<string | null>(null);
  const found = useRef(onCode);
  found.current = onCode;
  useEffect(() => {
    let stream: MediaStream | undefined;
    let timer: ReturnType<typeof setTimeout> | undefined;
    let isOver = false;
    const begin = async () => {
      const reader = await barcodeReader().catch(() => {
        throw new Error("The reader of barcodes could not be fetched; once there is signal it is kept.");
      });
      stream = await navigator.mediaDevices
        .getUserMedia({ video: { facingMode: "environment" } })
        .catch(() => {
          throw new Error("The camera was not given.");
        });
      if (isOver || video.current === null) return stop(stream);
      video.current.srcObject = stream;
      await video.current.play();
      let failures = 0;
      const look = async () => {
        const codes = await reader.detect(video.current ?? new Image()).catch(() => {
          failures += 1;
          return [];
        });
        if (isOver) return;
        const code = codes.map(({ rawValue }) => rawValue).find((text) => gtin14(text) !== undefined);
        if (code !== undefined) return found.current(code);
        if (failures > MANY_FAILURES)
          return setProblem("The camera's picture cannot be read on this device.");
        timer = setTimeout(() => void look(), LOOK_EVERY_MS);
      };
      await look();
    };
    begin().catch(({ message }: Error) => setProblem(message));
    return () => {
      isOver = true;
      clearTimeout(timer);
      if (stream !== undefined) stop(stream);
    };
  }, []);
  return (
    <div className="count-scan">
      {problem === null ? (
        <video ref={video} muted playsInline aria-label="What the camera sees" />
      ) : (
        <p role="alert">{problem} Type the number under the bars instead.</p>
      )}
      <Button onClick={onClose}>Stop scanning</Button>
    </div>
  );
}

/** A frame may fail while the camera starts; so many in a row will not mend themselves. */
const MANY_FAILURES = 40;

function stop(stream: MediaStream): void {
  for (const track of stream.getTracks()) track.stop();
}

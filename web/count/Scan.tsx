import { useEffect, useRef, useState } from "react";
import { gtin14 } from "#engine/measure/gtin.ts";
import { Button } from "../parts/Button.tsx";
import type { TextId } from "../texts/catalogues.ts";
import { say } from "../texts/say.ts";
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
      const reader = await barcodeReader().catch(() => stopWith("steps.noReader"));
      stream = await navigator.mediaDevices
        .getUserMedia({ video: { facingMode: "environment" } })
        .catch(() => stopWith("steps.noCamera"));
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
        if (failures > MANY_FAILURES) return setProblem(say("steps.noPicture"));
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
        <video ref={video} muted playsInline aria-label={say("steps.cameraSees")} />
      ) : (
        <p role="alert">
          {problem} {say("steps.typeInstead")}
        </p>
      )}
      <Button onClick={onClose}>{say("steps.stopScanning")}</Button>
    </div>
  );
}

/** A frame may fail while the camera starts; so many in a row will not mend themselves. */
const MANY_FAILURES = 40;

function stopWith(why: TextId): never {
  throw new Error(say(why));
}

function stop(stream: MediaStream): void {
  for (const track of stream.getTracks()) track.stop();
}

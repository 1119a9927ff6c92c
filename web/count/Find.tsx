import { Link, lazyRouteComponent } from "@tanstack/react-router";
import { type ReactNode, Suspense, useState } from "react";
import { Button } from "../parts/Button.tsx";
import { Field } from "../parts/Field.tsx";
import { withTexts } from "../texts/load.ts";
import { say } from "../texts/say.ts";
import { asBarcode, placesOf } from "./find-item.ts";
import { allFoundWords } from "./found-words.ts";
import type { Sheet } from "./sheet.ts";
import { type CountState, rowsOf } from "./use-count.ts";

const Scan = lazyRouteComponent(() => withTexts(() => import("./Scan.tsx")), "Scan");

/** Without a camera that the page may ask for (it takes HTTPS, or this machine), scanning is not offered. */
const CAN_SCAN = globalThis.navigator?.mediaDevices?.getUserMedia !== undefined;

type Props = { count: CountState; sheet: Sheet; here?: string; children: ReactNode };

/** Finds an item in any area by part of its name or by its barcode; with nothing typed, what stands there anyway. */
export function Find({ count, sheet, here, children }: Props) {
  const [typed, setTyped] = useState("");
  const [isScanning, setScanning] = useState(false);
  const places = typed.trim() === "" ? null : placesOf(sheet, typed, here);
  const isWrong = asBarcode(typed) === "wrong";
  return (
    <>
      <div className="count-find">
        <Field
          label={say("count.find")}
          type="search"
          hint={say("count.findHint")}
          error={isWrong ? say("count.checkDigit") : undefined}
          value={typed}
          onChange={(event) => setTyped(event.target.value)}
        />
        {CAN_SCAN ? <Button onClick={() => setScanning(!isScanning)}>{say("count.scan")}</Button> : null}
      </div>
      {isScanning ? (
        <Suspense>
          <Scan
            onCode={(code) => {
              setTyped(code);
              setScanning(false);
            }}
            onClose={() => setScanning(false)}
          />
        </Suspense>
      ) : null}
      {places === null ? (
        children
      ) : (
        <ul className="count-lines count-items">
          {places.map(({ area, item: { item } }) => {
            const found = rowsOf(count.rows, { area, item });
            return (
              <li key={`${area} ${item}`}>
                <Link to="/count" search={{ count: count.name, area, item }}>
                  <span>
                    {item}
                    {area === here ? null : <span className="soft">, {area}</span>}
                  </span>
                  <span className={found.length === 0 ? "soft" : "found"}>
                    {found.length === 0 ? say("count.notCounted") : allFoundWords(found)}
                  </span>
                </Link>
              </li>
            );
          })}
        </ul>
      )}
      {places?.length === 0 && !isWrong ? <p>{say("count.nothingLike")}</p> : null}
    </>
  );
}

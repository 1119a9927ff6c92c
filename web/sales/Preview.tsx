import { useEffect, useRef, useState } from "react";
import type { SalesShape } from "#engine/sales/read/shape.ts";
import { formatMoney } from "../money.ts";
import { Button } from "../parts/Button.tsx";
import { Field } from "../parts/Field.tsx";
import { useVenue } from "../shell/venue.tsx";
import { say } from "../texts/say.ts";
import { Corrections } from "./Corrections.tsx";
import { asUnderstood, filesLike, isSame, shapeFrom } from "./correction.ts";
import { Explained } from "./Explained.tsx";
import { FirstLines } from "./FirstLines.tsx";
import type { ReadingWish, SalesLook } from "./sales-queries.ts";

type Props = {
  file: string;
  look: SalesLook;
  /** Files chosen together with this one that come after it. */
  filesLeft: number;
  /** What a person said of its columns before this look. */
  corrected: SalesShape | undefined;
  onLook: (shape: SalesShape) => void;
  onTake: (wish: ReadingWish) => void;
  onLeave: () => void;
};

/** A file as it would be read: what it would bring, its columns to be put right, its first lines. */
export function Preview({ file, look, filesLeft, corrected, onLook, onTake, onLeave }: Props) {
  const { question, lines, report } = look;
  const [said, setSaid] = useState(() => asUnderstood(look));
  const [addsSums, setAddsSums] = useState(false);
  const [isKept, setKept] = useState(true);
  const [pattern, setPattern] = useState(() => filesLike(file));
  const head = useRef<HTMLHeadingElement>(null);
  useEffect(() => head.current?.focus(), []);
  const isCorrected = corrected !== undefined;
  const isSaidSeen = isSame(said, asUnderstood(look));
  const replacesSums = (report?.sumsReplaced.length ?? 0) > 0;
  const take = () =>
    onTake({
      ...(isCorrected ? { shape: corrected } : {}),
      ...(addsSums ? { addsSums } : {}),
      ...(isCorrected && isKept && pattern.trim() !== "" ? { rememberFor: pattern.trim() } : {}),
    });
  return (
    <div className="preview">
      <h2 ref={head} tabIndex={-1}>
        {file}
      </h2>
      {question === null ? null : (
        <div className="preview-question" role="alert">
          <p>
            <strong>{say("sales.question")}</strong> {asked(question, file)}
          </p>
          <p>{say("sales.questionNext")}</p>
        </div>
      )}
      {report === null ? null : <Explained report={report} isLook />}
      {report === null ? null : <UnknownOnes unmapped={report.unmapped} />}
      {replacesSums || addsSums ? (
        <label className="tick">
          <input type="checkbox" checked={addsSums} onChange={({ target }) => setAddsSums(target.checked)} />
          {say("sales.addSums")}
        </label>
      ) : null}
      {isCorrected && report !== null ? (
        <Remember {...{ isKept, pattern }} onKeep={setKept} onPattern={setPattern} />
      ) : null}
      <div className="preview-acts">
        <Button kind="main" disabled={report === null || report.lines === 0 || !isSaidSeen} onClick={take}>
          {say("sales.readIn")}
        </Button>
        <Button onClick={onLeave}>
          {filesLeft > 0 ? say("sales.leaveNextOf", { count: filesLeft }) : say("sales.leave")}
        </Button>
      </div>
      <Corrections
        look={look}
        said={said}
        isSeen={isSaidSeen}
        isOpen={question !== null || isUnsure(look)}
        onSay={setSaid}
        onLook={() => onLook(shapeFrom(look, said))}
      />
      {lines.length === 0 ? null : <FirstLines lines={lines} />}
    </div>
  );
}

/** The question without what a file of shapes would answer it with; on the screen the answer is given below. */
function asked(question: string, file: string): string {
  const text = question.startsWith(`${file}: `) ? question.slice(file.length + 2) : question;
  const sentences = text.split(/(?<=[.?])\s+(?=\p{Lu})/u);
  const kept = sentences.filter((sentence) => !sentence.includes("sales-shapes.json")).join(" ");
  const words = kept === "" ? text.replace(/\s+(?:in|under columns in) sales-shapes\.json/, "") : kept;
  return words.charAt(0).toUpperCase() + words.slice(1);
}

/** Whether something that matters was found, but not for certain: then a person should look. */
function isUnsure({ columns }: SalesLook): boolean {
  return columns.some(
    ({ role, confidence }) => role !== "unknown" && role !== "other" && role !== "staff" && confidence < 0.6,
  );
}

function UnknownOnes({ unmapped }: { unmapped: NonNullable<SalesLook["report"]>["unmapped"] }) {
  const { currency } = useVenue();
  if (unmapped.length === 0) return null;
  const net = unmapped.reduce((sum, one) => sum + one.net, 0);
  return <p>{say("sales.unknownIn", { count: unmapped.length, money: formatMoney(net, currency) })}</p>;
}

type RememberProps = {
  isKept: boolean;
  pattern: string;
  onKeep: (isKept: boolean) => void;
  onPattern: (pattern: string) => void;
};

function Remember({ isKept, pattern, onKeep, onPattern }: RememberProps) {
  return (
    <div className="remember">
      <label className="tick">
        <input type="checkbox" checked={isKept} onChange={({ target }) => onKeep(target.checked)} />
        {say("sales.remember")}
      </label>
      {isKept ? (
        <Field
          label={say("sales.filesCalled")}
          hint={say("sales.filesCalledHint")}
          value={pattern}
          onChange={({ target }) => onPattern(target.value)}
        />
      ) : null}
    </div>
  );
}

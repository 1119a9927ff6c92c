import "./look.css";
import { useState } from "react";
import { Busy } from "../parts/Busy.tsx";
import { Button } from "../parts/Button.tsx";
import { Combobox } from "../parts/Combobox.tsx";
import { ConfirmDialog } from "../parts/ConfirmDialog.tsx";
import { Empty } from "../parts/Empty.tsx";
import { Field, Select } from "../parts/Field.tsx";
import { Money } from "../parts/Money.tsx";
import { useNotify } from "../parts/Notice.tsx";
import { Page } from "../parts/Page.tsx";
import { Problems } from "../parts/Problems.tsx";
import { Quantity } from "../parts/Quantity.tsx";
import { Uncertain, UncertainMoney } from "../parts/Uncertain.tsx";
import { Verdict } from "../parts/Verdict.tsx";
import { say, sayWith } from "../texts/say.ts";
import { LevelLines } from "./LevelLines.tsx";
import { Palette } from "./Palette.tsx";

/** The parts every screen is made of, side by side, for whoever changes one. */
export function LookPage() {
  return (
    <Page title={say("look.title")} next={say("look.next")}>
      <Palette />
      <section>
        <h2>{say("look.words")}</h2>
        <p>
          {sayWith("look.wordsText", {
            link: <a href="#main">{say("look.wordsLink")}</a>,
            command: <code>{say("look.wordsCommand")}</code>,
            aside: <span className="soft">{say("look.wordsAside")}</span>,
          })}
        </p>
      </section>
      <LevelLines />
      <Numbers />
      <Controls />
      <section>
        <h2>{say("look.states")}</h2>
        <Empty title={say("look.nothingYet")}>
          <p>{say("look.nothingYetHow")}</p>
        </Empty>
        <div className="look-busy">
          <Busy what={say("look.reckoning")} />
        </div>
        <Problems
          error={new Error("deliveries.csv row 14, pack: no pack “700 ml” of “Dry gin”; it has “1 L”.")}
        />
      </section>
    </Page>
  );
}

function Numbers() {
  return (
    <section>
      <h2>{say("look.numbers")}</h2>
      <ul className="look-list">
        <li>
          <Quantity amount={2100} base="ml" /> ·{" "}
          <Quantity amount={1680} base="ml" containerSize={700} packName="700 ml" /> ·{" "}
          <Quantity amount={12} base="each" /> · <Quantity amount={null} base="g" />
        </li>
        <li>
          <Uncertain amount={-420} sd={61} base="ml" signed /> · <UncertainMoney amount={222} sd={61} /> ·{" "}
          <Money amount={12.5} /> · <Money amount={null} />
        </li>
        <li>
          <Verdict verdict="chase" /> · <Verdict verdict="watch" /> · <Verdict verdict="quiet" />
        </li>
      </ul>
    </section>
  );
}

const SPIRITS = ["Dry gin", "Strong gin", "White rum", "Aged rum", "Rye", "Bourbon"];

function Controls() {
  const notify = useNotify();
  const [isAsking, setAsking] = useState(false);
  const [item, setItem] = useState<string | null>(null);
  return (
    <section>
      <h2>{say("look.controls")}</h2>
      <div className="field-row look-controls">
        <Field
          label={say("look.amount")}
          inputMode="decimal"
          defaultValue="1 1/2"
          hint={say("look.amountHint")}
        />
        <Field label={say("look.refused")} defaultValue="1 700" error={say("look.refusedWhy")} />
        <Select label={say("look.unit")} options={["oz", "ml", "cl"]} />
        <Combobox
          label={say("look.item")}
          choices={SPIRITS.map((value) => ({ value, detail: say("look.spirit") }))}
          value={item}
          onChange={setItem}
        />
      </div>
      <div className="look-buttons">
        <Button kind="main" onClick={() => setAsking(true)}>
          {say("look.askFirst")}
        </Button>
        <Button
          onClick={() =>
            notify({ text: say("look.entered"), undo: () => notify({ text: say("look.takenBack") }) })
          }
        >
          {say("look.tell")}
        </Button>
        <Button kind="quiet">{say("look.quiet")}</Button>
        <Button disabled>{say("look.notNow")}</Button>
      </div>
      <ConfirmDialog
        isOpen={isAsking}
        title={say("look.doIt")}
        act={say("look.doItAct")}
        onConfirm={() => setAsking(false)}
        onCancel={() => setAsking(false)}
      >
        <p>{say("look.doItWhy")}</p>
      </ConfirmDialog>
    </section>
  );
}

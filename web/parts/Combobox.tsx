import "./combobox.css";
import {
  ComboBox,
  FieldError,
  Input,
  Label,
  ListBox,
  ListBoxItem,
  Popover,
  Text,
  Button as TriggerButton,
} from "react-aria-components";
import { say } from "../texts/say.ts";

export type Choice = {
  value: string;
  /** Shown under the name, as a category. */
  detail?: string | undefined;
};

type Props = {
  label: string;
  choices: readonly Choice[];
  value: string | null;
  onChange: (value: string | null) => void;
  hint?: string;
  error?: string | undefined;
  placeholder?: string;
  isDisabled?: boolean;
};

/** Picks one of many by typing part of its name; arrow keys, Enter and Escape work as screen readers expect. */
export function Combobox({
  label,
  choices,
  value,
  onChange,
  hint,
  error,
  placeholder,
  isDisabled = false,
}: Props) {
  return (
    <ComboBox
      className="field combobox"
      defaultItems={choices.map((choice) => ({ ...choice, id: choice.value }))}
      selectedKey={value}
      onSelectionChange={(key) => onChange(key === null ? null : String(key))}
      isInvalid={error !== undefined}
      isDisabled={isDisabled}
      menuTrigger="focus"
    >
      <Label className="field-label">{label}</Label>
      <div className="combobox-input">
        <Input placeholder={placeholder ?? say("parts.typePart")} />
        <TriggerButton className="combobox-open" aria-label={say("parts.showAll")}>
          ▾
        </TriggerButton>
      </div>
      {hint === undefined ? null : (
        <Text slot="description" className="field-more">
          {hint}
        </Text>
      )}
      <FieldError className="field-more field-error" data-check={say("parts.check")}>
        {error}
      </FieldError>
      <Popover className="combobox-list">
        <ListBox<Choice & { id: string }>
          renderEmptyState={() => <p className="combobox-none">{say("parts.nothingNamed")}</p>}
        >
          {(choice) => (
            <ListBoxItem className="combobox-choice" textValue={choice.value}>
              <Text slot="label">{choice.value}</Text>
              {choice.detail === undefined ? null : (
                <Text slot="description" className="combobox-detail">
                  {choice.detail}
                </Text>
              )}
            </ListBoxItem>
          )}
        </ListBox>
      </Popover>
    </ComboBox>
  );
}

import { useId } from 'react';
import { m } from '../../messages/index.ts';
import { QuantityField } from '../../numbers/quantity-field.tsx';

export type Point = [number, number, number];

interface Props {
  readonly label: string;
  readonly unit: string;
  readonly value: Readonly<Point>;
  readonly onChange: (value: Point) => void;
}

/** Three numbers side by side. */
export function PointField({ label, unit, value, onChange }: Props) {
  const title = useId();
  const set = (axis: number, next: number) => {
    const point: Point = [...value];
    point[axis] = next;
    onChange(point);
  };
  return (
    <fieldset className="site-point" aria-labelledby={title}>
      <span id={title} className="soft">
        {label}
      </span>
      {m.site.axes.map((name, axis) => (
        <QuantityField
          key={name}
          label={name}
          unit={unit}
          low={-1e6}
          high={1e6}
          value={Math.round(value[axis] * 1e4) / 1e4}
          onChange={(next) => next !== null && set(axis, next)}
        />
      ))}
    </fieldset>
  );
}

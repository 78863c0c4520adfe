import type { Product } from '@coveline/project';
import { Button, Checkbox } from 'react-aria-components';
import { m } from '../../messages/index.ts';
import { QuantityField } from '../../numbers/quantity-field.tsx';
import type { SectionProps } from './brief-page.tsx';
import { SavedWords } from './saved-words.tsx';
import { wordList } from './word-list.ts';

type NumberKey =
  | 'ph'
  | 'waterActivity'
  | 'fat_percent'
  | 'protein_percent'
  | 'storage_degC'
  | 'shelfLife_days';

const numbers: readonly (readonly [NumberKey, string, string, number, number])[] = [
  ['ph', m.brief.ph, '1', 0, 14],
  ['waterActivity', m.brief.waterActivity, '1', 0, 1],
  ['fat_percent', m.brief.fat, '%', 0, 100],
  ['protein_percent', m.brief.protein, '%', 0, 100],
  ['storage_degC', m.brief.storage, 'degC', -60, 150],
  ['shelfLife_days', m.brief.shelfLife, 'd', 0, 5000],
];

export function ProductsSection({ brief, set }: SectionProps) {
  const { products } = brief;
  return (
    <section>
      <h2>{m.brief.products}</h2>
      {products.map((product, index) => (
        <ProductFields
          // biome-ignore lint/suspicious/noArrayIndexKey: products have no other identity; names may repeat.
          key={index}
          title={m.brief.product(index + 1)}
          product={product}
          onChange={(next) => set({ products: products.map((p, i) => (i === index ? next : p)) })}
          onRemove={() => set({ products: products.filter((_, i) => i !== index) })}
        />
      ))}
      <Button
        className="outlined"
        onPress={() =>
          set({ products: [...products, { name: m.brief.newProduct, allergens: [], particles: false }] })
        }
      >
        + {m.brief.addProduct}
      </Button>
    </section>
  );
}

interface Props {
  readonly title: string;
  readonly product: Product;
  readonly onChange: (product: Product) => void;
  readonly onRemove: () => void;
}

function ProductFields({ title, product, onChange, onRemove }: Props) {
  const setNumber = (key: NumberKey, value: number | null) => {
    const { [key]: _, ...rest } = product;
    onChange(value === null ? rest : { ...rest, [key]: value });
  };
  return (
    <fieldset className="product">
      <legend>{title}</legend>
      <div className="pair">
        <SavedWords
          label={m.brief.name}
          value={product.name}
          onSave={(name) => name.trim() !== '' && onChange({ ...product, name: name.trim() })}
        />
        <Button className="quiet" onPress={onRemove} aria-label={m.brief.removeProduct(product.name)}>
          ✕
        </Button>
      </div>
      <div className="number-fields">
        {numbers.map(([key, label, unit, low, high]) => (
          <QuantityField
            key={key}
            label={label}
            value={product[key] ?? null}
            unit={unit}
            low={low}
            high={high}
            optional
            placeholder={m.brief.nothingEntered}
            onChange={(value) => setNumber(key, value)}
          />
        ))}
      </div>
      <SavedWords
        label={m.brief.allergens}
        value={product.allergens.join(', ')}
        onSave={(text) => onChange({ ...product, allergens: wordList(text) })}
      />
      <Checkbox isSelected={product.particles} onChange={(particles) => onChange({ ...product, particles })}>
        <span className="check" /> {m.brief.particles}
      </Checkbox>
    </fieldset>
  );
}

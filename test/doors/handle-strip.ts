/** A lot of oak strips for shop-made handles. */
export const HANDLE_STRIP = {
  id: 'oak',
  name: 'Oak strip',
  material: 'oak-white',
  form: 'strip',
  nominal: '20 mm',
  width: '30 mm',
  stock: [{ id: 'oak-length', length: '1000 mm', price: 6 }],
};

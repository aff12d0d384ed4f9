/** What a person always sees; the words are fixed by the design. */
export const CAUTION = {
  model: 'A teaching model. Not for planning dives, choosing lead or handling emergencies. Your body and kit differ.',
  lungs: 'Never hold your breath on scuba: gas expanding in the lungs can injure within about a metre of ascent.',
  training:
    'Follow your training, your training organisation’s standards, the equipment manuals and local rules. Emergency skills are learned in water, under supervision.',
  leftOut: 'Not modelled: ears and sinuses, decompression, oxygen, narcosis, cold, stress, other divers.',
  marks: 'A mark describes control of this screen. It is no evidence of competence in water.',
  worlds: 'Altitude and other worlds: a thought experiment.',
  loop: 'Closed loop: concept only, no rebreather operation is taught.',
} as const;

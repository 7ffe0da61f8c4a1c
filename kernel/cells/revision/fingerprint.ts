/** Hashes of what is frozen: over one spelling of it, so that neither the order of keys nor line endings count. */
import { sha256 } from '@noble/hashes/sha2.js'
import { bytesToHex, utf8ToBytes } from '@noble/hashes/utils.js'
import { canonicalJson, Fingerprint, type FrozenText, type RevisionContent } from '../../../shared/contracts/index.js'

/** SHA-256 over the canonical JSON of any data. */
export function hashOf(value: unknown): Fingerprint {
  return Fingerprint.parse(bytesToHex(sha256(utf8ToBytes(canonicalJson(value)))))
}

/** What is signed: text, results, the kernel's hash, the methods used, and the cells without current values. */
export function contentFingerprint(content: RevisionContent): Fingerprint {
  return hashOf(['hoverfolio content 1', content])
}

/** Of the text alone: tells whether a live text is still the one that was frozen. */
export function textFingerprint(text: FrozenText): Fingerprint {
  return hashOf(['hoverfolio text 1', text])
}

/** Over all of a record but the seal that it states. */
export function sealOf(record: Readonly<Record<string, unknown>>): Fingerprint {
  const { seal: _, ...sealed } = record
  return hashOf(['hoverfolio record 1', sealed])
}

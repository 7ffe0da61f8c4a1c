/** The page of a comparison: its script computes the waterfall, all else the server drew. */
import '../styles/compare-page.css'
import { openPagePipeline } from '../compute/pipeline.js'
import { WaterfallPanel } from '../revisions/waterfall-panel.js'

const panel = document.getElementById('waterfall')
const data = document.getElementById('page-data')?.textContent
if (panel !== null && data !== null && data !== undefined)
  new WaterfallPanel(panel, JSON.parse(data), openPagePipeline())

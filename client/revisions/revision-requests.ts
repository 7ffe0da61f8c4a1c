/** What the page asks the server about revisions. */
import {
  type IssueRevision,
  NotebookSummary,
  RevisionList,
  RevisionSummary,
  type SignRevision,
} from '../../shared/contracts/index.js'
import { notebookPath, request } from '../live/requests.js'

export const listRevisions = async (id: string) =>
  RevisionList.parse(await request('GET', notebookPath(id, '/revisions')))

export const issueRevision = async (id: string, wish: IssueRevision) =>
  RevisionSummary.parse(await request('POST', notebookPath(id, '/revisions'), wish))

export const signRevision = async (id: string, name: string, signature: SignRevision) =>
  RevisionSummary.parse(await request('POST', notebookPath(id, `/revisions/${name}/signatures`), signature))

export const beginFromRevision = async (id: string, name: string) =>
  NotebookSummary.parse(await request('POST', notebookPath(id, `/revisions/${name}/notebook`)))

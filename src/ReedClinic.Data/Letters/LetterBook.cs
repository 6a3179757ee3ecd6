using Microsoft.EntityFrameworkCore;
using ReedClinic.Data.Audit;
using ReedClinic.Data.Jobs;
using ReedClinic.Data.TeachingNotes;
using ReedClinic.Domain.Intake;
using ReedClinic.Domain.Letters;
using ReedClinic.Domain.Outcomes;
using ReedClinic.Domain.People;

namespace ReedClinic.Data.Letters;

/// <summary>Writing a return letter and sending it; what was sent is put right by <see cref="LetterCorrectionBook"/>. For teachers and owners.</summary>
public sealed class LetterBook(IDbContextFactory<ClinicDb> databases, TimeProvider time, Outbox outbox)
{
    private readonly LetterChange _change = new(databases, time);

    /// <summary>The letter as it stands; null when there is no such batch for this actor.</summary>
    public async Task<LetterView?> ReadAsync(Actor actor, BatchCode code, CancellationToken ct)
    {
        ArgumentNullException.ThrowIfNull(actor);
        if (!actor.WorksHere)
        {
            return null;
        }

        var db = await databases.CreateDbContextAsync(ct).ConfigureAwait(false);
        await using var _ = db.ConfigureAwait(false);
        return await LetterReader.ReadAsync(db, code, actor.Account, ct).ConfigureAwait(false);
    }

    /// <summary>One saved version; null when there is none for this actor.</summary>
    public async Task<LetterDraft?> VersionAsync(Actor actor, BatchCode code, int number, CancellationToken ct)
    {
        ArgumentNullException.ThrowIfNull(actor);
        var db = await databases.CreateDbContextAsync(ct).ConfigureAwait(false);
        await using var _ = db.ConfigureAwait(false);
        var payload = await (
            from version in db.Set<LetterVersion>()
            join batch in db.Set<Batch>() on version.Batch equals batch.Id
            where actor.WorksHere && batch.Code == code && version.Number == number
            select version.Payload).SingleOrDefaultAsync(ct).ConfigureAwait(false);
        return payload is null ? null : LetterPayload.Read(payload);
    }

    /// <summary>Keeps what was changed in some blocks, as another version. An empty text leaves a block out.</summary>
    public Task<Outcome<LetterView>> SaveAsync(
        Actor actor, BatchCode code, IReadOnlyDictionary<string, string> texts, Guid version, OperationId operation, CancellationToken ct)
    {
        ArgumentNullException.ThrowIfNull(texts);
        operation = operation.OrFresh(time.GetUtcNow());
        return _change.MakeAsync(new(actor, code, operation, "save-letter", LetterMoment.Open, version), async (db, view, letter) =>
        {
            var problems = new List<Problem>();
            foreach (var (key, text) in texts)
            {
                if (PlainText.Read(text, key, LetterBlock.LongestText, problems, severalLines: true) is not null && !view.Draft.HasPlaceFor(key))
                {
                    problems.Add(new Problem(key, "This part isn’t in the letter any more, so what you wrote for it wasn’t kept. It is below, to copy."));
                }
            }

            if (problems.Count == 0)
            {
                var draft = view.Draft.EditedTo(texts, view.Composed);
                db.Add(letter.Keep(LetterPayload.Write(draft), operation, actor.Account, time.GetUtcNow()));
                await db.UsePicturesAsync(draft, ct).ConfigureAwait(false);
            }

            return problems;
        }, ct);
    }

    /// <summary>Writes one part anew, as another version: no other part changes, and what stood there stays in the versions.</summary>
    public Task<Outcome<LetterView>> RewriteAsync(
        Actor actor, BatchCode code, string key, PartWish wish, Guid version, OperationId operation, CancellationToken ct)
    {
        operation = operation.OrFresh(time.GetUtcNow());
        return _change.MakeAsync(new(actor, code, operation, "rewrite-part", LetterMoment.Draft, version), async (db, view, letter) =>
        {
            var draft = wish switch
            {
                PartWish.OtherWords => PartRewriting.InOtherWords(view.Draft, key, view.Material),
                PartWish.AsIn(var number) => PartRewriting.AsIn(
                    view.Draft, key, await LetterReader.VersionAsync(db, view.AtBench.Batch.Id, number, ct).ConfigureAwait(false), view.Material),
                _ => PartRewriting.Afresh(view.Draft, key, view.Material),
            };
            if (draft is null)
            {
                return [new Problem(key, wish is PartWish.OtherWords ? "There are no other words for this part." : "The log says nothing here any more, so this part stays as you wrote it.")];
            }

            db.Add(letter.Keep(LetterPayload.Write(draft), operation, actor.Account, time.GetUtcNow()));
            return [];
        }, ct);
    }

    /// <summary>Leaves a gap open, with a reason; without one, the waiver is taken back.</summary>
    public Task<Outcome<LetterView>> WaiveAsync(
        Actor actor, BatchCode code, string gap, string? reason, OperationId operation, CancellationToken ct) =>
        _change.MakeAsync(new(actor, code, operation, "waive-gap", LetterMoment.Draft), (db, view, letter) =>
        {
            var problems = new List<Problem>();
            var why = PlainText.Read(reason, "Reason", LetterWaiver.LongestReason, problems);
            if (problems.Count > 0)
            {
                return problems;
            }

            if (why is null && view.Waived.Any(waived => waived.Gap.Key == gap))
            {
                letter.TakeBackWaiver(gap);
            }
            else if (why is null)
            {
                problems.Add(new Problem("Reason", "Say why it can stay open."));
            }
            else if (view.Gaps.Any(open => open.Key == gap && open.IsInTheWords))
            {
                problems.Add(new Problem("Reason", "Write what belongs there, in the letter itself."));
            }
            else if (view.Gaps.Concat(view.Notices).Concat(view.Waived.Select(waived => waived.Gap)).Any(known => known.Key == gap))
            {
                letter.Waive(gap, why, actor.Account, time.GetUtcNow());
            }
            else
            {
                problems.Add(new Problem("Reason", "This isn’t asked any more, so what you wrote isn’t kept. Put it into the letter itself if the student should read it."));
            }

            return problems;
        }, ct);

    /// <summary>Answers a question of the student's.</summary>
    public Task<Outcome<LetterView>> AnswerAsync(
        Actor actor, BatchCode code, QuestionId question, string? answer, OperationId operation, CancellationToken ct) =>
        _change.MakeAsync(new(actor, code, operation, "answer-question", LetterMoment.Draft), async (db, view, letter) =>
        {
            var problems = new List<Problem>();
            var text = PlainText.Read(answer, "Answer", Question.LongestAnswer, problems, severalLines: true);
            if (text is null && problems.Count == 0)
            {
                problems.Add(new Problem("Answer", "Write an answer, or leave the question open with a reason."));
            }

            var batch = view.AtBench.Batch.Id;
            var asked = await db.Set<Question>()
                .SingleOrDefaultAsync(row => row.Id == question && row.Batch == batch, ct).ConfigureAwait(false);
            if (asked is null)
            {
                problems.Add(new Problem("Answer", "That question isn’t part of this batch."));
            }

            if (problems.Count == 0)
            {
                asked!.AnswerWith(text!, time.GetUtcNow());
            }

            return problems;
        }, ct);

    /// <summary>
    /// Sends the letter for the first time: what was sent never changes. The same operation again gives the same answer,
    /// another one is refused.
    /// </summary>
    /// <param name="actor">Who sends it.</param>
    /// <param name="code">The batch.</param>
    /// <param name="mark">The mark of the letter that was looked at; when it isn't that any more, the answer is what stands.</param>
    /// <param name="operation">Made when the form opened.</param>
    /// <param name="ct">Cancels before it is sent.</param>
    public Task<Outcome<LetterView>> SendAsync(Actor actor, BatchCode code, string mark, OperationId operation, CancellationToken ct)
    {
        operation = operation.OrFresh(time.GetUtcNow());
        outbox.Ready();
        return _change.MakeAsync(new(actor, code, operation, "send-letter", LetterMoment.Draft), async (db, view, letter) =>
        {
            if (view.Mark != mark)
            {
                return null;
            }

            if (view.Gaps.Count > 0)
            {
                return [.. view.Gaps.Select(gap => new Problem(gap.Key, gap.Words))];
            }

            var now = time.GetUtcNow();
            db.AddSent(letter.Send(LetterPayload.Write(view.Draft), operation, actor.Account, now));
            var id = view.AtBench.Batch.Id;
            var batch = await db.Set<Batch>().SingleAsync(row => row.Id == id, ct).ConfigureAwait(false);
            batch.Reach(Stage.LetterSent, now);
            db.Tell(AuditEvent.LetterSent, now, actor.Account.Value, batch.Student.Value, id.Value);
            await outbox.PutNewsAsync(db, batch, $"/letters/{code}", ct).ConfigureAwait(false);
            return [];
        }, ct);
    }
}

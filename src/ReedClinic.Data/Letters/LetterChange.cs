using Microsoft.EntityFrameworkCore;
using ReedClinic.Data.Engine;
using ReedClinic.Data.Intake;
using ReedClinic.Data.People;
using ReedClinic.Domain.Intake;
using ReedClinic.Domain.Letters;
using ReedClinic.Domain.Outcomes;
using ReedClinic.Domain.People;

namespace ReedClinic.Data.Letters;

/// <summary>When something may be done to a letter.</summary>
internal enum LetterMoment
{
    /// <summary>Before it was sent for the first time.</summary>
    Draft,

    /// <summary>While its words are open: before it was sent, or while it is corrected.</summary>
    Open,

    /// <summary>After it was sent, while nobody corrects it.</summary>
    Sent,

    /// <summary>While it is corrected.</summary>
    Correction,
}

/// <summary>A change of a letter.</summary>
/// <param name="Actor">Who changes it.</param>
/// <param name="Code">The batch.</param>
/// <param name="Operation">What changes it.</param>
/// <param name="Verb">What it is called among the operations that were done.</param>
/// <param name="When">When it may be done.</param>
/// <param name="Version">The version that was looked at; null where that doesn't matter.</param>
/// <param name="NeedsConsent">Whether it is work for the student, which nobody does once consent was taken back.</param>
internal sealed record LetterDeed(Actor Actor, BatchCode Code, OperationId Operation, string Verb, LetterMoment When, Guid? Version = null, bool NeedsConsent = true);

/// <summary>What every change of a letter shares: who may, whether it was done before, whether its moment has passed, and who was quicker.</summary>
internal sealed class LetterChange(IDbContextFactory<ClinicDb> databases, TimeProvider time)
{
    public Task<Outcome<LetterView>> MakeAsync(LetterDeed deed, Func<ClinicDb, LetterView, Letter, List<Problem>> change, CancellationToken ct) =>
        MakeAsync(deed, (db, view, letter) => Task.FromResult<List<Problem>?>(change(db, view, letter)), ct);

    /// <summary>Makes a change. It gives its problems, or null when what was looked at isn't what stands.</summary>
    public Task<Outcome<LetterView>> MakeAsync(LetterDeed deed, Func<ClinicDb, LetterView, Letter, Task<List<Problem>?>> change, CancellationToken ct)
    {
        ArgumentNullException.ThrowIfNull(deed.Actor);
        deed = deed with { Operation = deed.Operation.OrFresh(time.GetUtcNow()) };
        return databases.PatientlyAsync((attempt, stop) => TryAsync(attempt, deed, change, stop), ct);
    }

    private async Task<Outcome<LetterView>> TryAsync(
        Attempt attempt, LetterDeed deed, Func<ClinicDb, LetterView, Letter, Task<List<Problem>?>> change, CancellationToken ct)
    {
        var (actor, code, operation) = (deed.Actor, deed.Code, deed.Operation);
        var db = await databases.CreateDbContextAsync(ct).ConfigureAwait(false);
        await using var _ = db.ConfigureAwait(false);
        var transaction = await db.HoldConsentAsync(attempt, db.Set<Batch>().Where(batch => actor.WorksHere && batch.Code == code), ct).ConfigureAwait(false);
        await using var __ = transaction.ConfigureAwait(false);
        if ((actor.WorksHere ? await LetterReader.ReadAsync(db, code, actor.Account, ct).ConfigureAwait(false) : null) is not { } view)
        {
            return new Outcome<LetterView>.NotFound();
        }

        var batch = view.AtBench.Batch.Id.Value;
        if (await db.WasDoneAsync(operation, deed.Verb, batch, ct).ConfigureAwait(false))
        {
            return await AnswerAsync(db, actor, code, saved: true, ct).ConfigureAwait(false);
        }

        if (Hindrance(view, deed) is { } hindrance)
        {
            return hindrance;
        }

        if (await OpenAsync(db, view, ct).ConfigureAwait(false) is { } letter)
        {
            if (await change(db, view, letter).ConfigureAwait(false) is var problems && problems is not { Count: 0 })
            {
                return problems is null ? new Outcome<LetterView>.Conflict(view) : new Outcome<LetterView>.Refused(problems);
            }

            db.Note(operation, deed.Verb, batch, time.GetUtcNow());
            await db.SaveUnlessDoneAsync(ct).ConfigureAwait(false);
            await transaction.CommitAsync(ct).ConfigureAwait(false);
        }

        return await AnswerAsync(db, actor, code, await db.WasDoneAsync(operation, deed.Verb, batch, ct).ConfigureAwait(false), ct).ConfigureAwait(false);
    }

    private static Outcome<LetterView>? Hindrance(LetterView view, LetterDeed deed)
    {
        Problem? passed = (deed.When, view) switch
        {
            (LetterMoment.Draft or LetterMoment.Open, { IsSent: true }) => new Problem("", "This letter has been sent, so its words are closed. A correction puts right what is wrong in it."),
            (LetterMoment.Draft, { IsCorrection: true }) => new Problem("", "A correction changes only the words of what was sent."),
            (LetterMoment.Sent, { SentAt: null }) => new Problem("", "This letter hasn’t been sent yet: it can be changed as it is."),
            (_, { AtBench.Student.MayBeWorkedFor: false }) when deed.NeedsConsent => ConsentTakenBack.Unworked,
            _ => null,
        };
        if (passed is { } problem)
        {
            return new Outcome<LetterView>.Refused([problem]);
        }

        var isStale = deed.When == LetterMoment.Sent ? view.IsCorrection : deed.When == LetterMoment.Correction && !view.IsCorrection;
        return isStale || (deed.Version is { } expected && expected != view.Version) ? new Outcome<LetterView>.Conflict(view) : null;
    }

    private static async Task<Outcome<LetterView>> AnswerAsync(
        ClinicDb db, Actor actor, BatchCode code, bool saved, CancellationToken ct)
    {
        var stands = await LetterReader.ReadAsync(db, code, actor.Account, ct).ConfigureAwait(false);
        return saved ? new Outcome<LetterView>.Done(stands!) : new Outcome<LetterView>.Conflict(stands!);
    }

    // Null when somebody was quicker since the view was read.
    private static async Task<Letter?> OpenAsync(ClinicDb db, LetterView view, CancellationToken ct)
    {
        var batch = view.AtBench.Batch.Id;
        var letter = await db.Set<Letter>().Include(row => row.Waivers)
            .SingleOrDefaultAsync(row => row.Batch == batch, ct).ConfigureAwait(false);
        if (letter is null)
        {
            letter = new Letter(batch);
            db.Add(letter);
        }
        else if (letter.Version != view.Version)
        {
            return null;
        }
        else
        {
            // Whatever changes around a letter moves its version, so that two teachers don't work past each other.
            db.Entry(letter).Property(row => row.LastNumber).IsModified = true;
            db.ExpectVersion(letter, view.Version);
        }

        return letter;
    }
}

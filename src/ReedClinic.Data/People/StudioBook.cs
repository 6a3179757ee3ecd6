using Microsoft.EntityFrameworkCore;
using ReedClinic.Data.Audit;
using ReedClinic.Data.Engine;
using ReedClinic.Domain.Outcomes;
using ReedClinic.Domain.People;

namespace ReedClinic.Data.People;

/// <summary>The studio: whether it is open, and opening it on the first run.</summary>
public sealed class StudioBook(
    IDbContextFactory<ClinicDb> databases, TimeProvider time, AccountRegister register, FirstRunCode firstRun)
{
    private const string Describe = "describe-studio";
    private const string Keep = "keep-records";
    private const string Admit = "admit-to-studio";

    /// <summary>The studio, or null while it has no owner.</summary>
    public async Task<StudioView?> Read(CancellationToken ct)
    {
        var db = await databases.CreateDbContextAsync(ct).ConfigureAwait(false);
        await using (db.ConfigureAwait(false))
        {
            return await db.Set<Studio>().AsNoTracking()
                .Select(studio => new StudioView(studio.Name, studio.OpenedAt, studio.PostTo, studio.Version)
                {
                    WriteTo = studio.WriteTo,
                    SignUpOpen = studio.SignUpOpen,
                    ConsentAge = studio.ConsentAge,
                    KeepYears = studio.KeepYears,
                    PrivacyContact = studio.PrivacyContact,
                    PrivacyWords = studio.PrivacyWords,
                })
                .SingleOrDefaultAsync(ct).ConfigureAwait(false);
        }
    }

    /// <summary>
    /// Makes the first owner, who teaches too, and opens the studio. Works once: the studio's only row is in the same
    /// save, so of two people with the code only one gets in.
    /// </summary>
    /// <param name="code">What was typed as the code that the console showed.</param>
    /// <param name="studioName">What the studio is called in letters.</param>
    /// <param name="postTo">The address that parcels are posted to; may be said later.</param>
    /// <param name="owner">The owner's account.</param>
    /// <param name="operation">The form's operation.</param>
    /// <param name="ct">Stops it.</param>
    /// <returns>The owner's account; NotFound once the studio is open.</returns>
    public Task<Outcome<AccountId>> Open(
        string? code, string? studioName, string? postTo, NewAccount owner, OperationId operation, CancellationToken ct) =>
        Open(code, studioName, postTo, null, owner, operation, ct);

    /// <summary>The same, settling at once who may come in.</summary>
    /// <param name="code">What was typed as the code that the console showed.</param>
    /// <param name="studioName">What the studio is called in letters.</param>
    /// <param name="postTo">The address that parcels are posted to; may be said later.</param>
    /// <param name="admission">Who may come in; may be said later.</param>
    /// <param name="owner">The owner's account.</param>
    /// <param name="operation">The form's operation.</param>
    /// <param name="ct">Stops it.</param>
    /// <returns>The owner's account; NotFound once the studio is open.</returns>
    public async Task<Outcome<AccountId>> Open(
        string? code, string? studioName, string? postTo, Admission? admission, NewAccount owner, OperationId operation, CancellationToken ct)
    {
        ArgumentNullException.ThrowIfNull(owner);
        var name = PersonName.Read(studioName);
        List<Problem> problems = [];
        if (!firstRun.Is(code))
        {
            problems.Add(new Problem("Code", "That isn’t the code this start of the program announced. Copy it from the console."));
        }

        var address = Check(studioName, postTo, problems);
        problems.AddRange(admission?.Problems() ?? []);
        problems.AddRange(owner.Problems());
        if (problems.Count > 0)
        {
            return new Outcome<AccountId>.Refused(problems);
        }

        var outcome = await register.MakeAsync(
            owner,
            [Role.Owner, Role.Teacher],
            operation,
            (db, account) =>
            {
                var studio = new Studio(name!, new AccountId(account.Id), time.GetUtcNow());
                studio.Describe(name!, address, writeTo: null);
                admission?.Settle(studio);
                db.Add(studio);
                db.Tell(AuditEvent.StudioOpened, account.CreatedAt, account.Id);
                db.Tell(AuditEvent.RoleGiven, account.CreatedAt, account.Id, account.Id);
                return Task.FromResult(true);
            },
            ct).ConfigureAwait(false);
        return outcome is Outcome<AccountId>.Refused && await Read(ct).ConfigureAwait(false) is not null
            ? new Outcome<AccountId>.NotFound()
            : outcome;
    }

    /// <summary>Says what the studio is called, where parcels are posted to and where mail is written to. Only for owners.</summary>
    /// <param name="actor">Who says it.</param>
    /// <param name="studioName">What the studio is called in letters.</param>
    /// <param name="postTo">The address that parcels are posted to.</param>
    /// <param name="writeTo">The address that people write mail to; nothing when they can't.</param>
    /// <param name="version">The version that the form was opened on.</param>
    /// <param name="operation">The form's operation.</param>
    /// <param name="ct">Stops it.</param>
    public Task<Outcome<StudioView>> DescribeAsync(
        Actor actor, string? studioName, string? postTo, string? writeTo, Guid version, OperationId operation, CancellationToken ct)
    {
        var name = PersonName.Read(studioName);
        List<Problem> problems = [];
        var address = Check(studioName, postTo, problems);
        var mail = string.IsNullOrWhiteSpace(writeTo) ? null : EmailAddress.Read(writeTo);
        if (mail is null && !string.IsNullOrWhiteSpace(writeTo))
        {
            problems.Add(new Problem("WriteTo", "Write the e-mail address in full, such as name@example.org."));
        }

        return ChangeAsync(actor, Describe, problems, studio => studio.Describe(name!, address, mail), version, operation, ct);
    }

    /// <summary>Settles how long records are kept and what is said about it. Only for owners.</summary>
    /// <param name="actor">Who says it.</param>
    /// <param name="years">Years after the last sign of life, as typed.</param>
    /// <param name="contact">Whom to ask about what is kept.</param>
    /// <param name="words">The studio's own words about it, in Markdown.</param>
    /// <param name="version">The version that the form was opened on.</param>
    /// <param name="operation">The form's operation.</param>
    /// <param name="ct">Stops it.</param>
    public Task<Outcome<StudioView>> KeepAsync(
        Actor actor, string? years, string? contact, string? words, Guid version, OperationId operation, CancellationToken ct)
    {
        List<Problem> problems = [];
        if (!int.TryParse(years, System.Globalization.NumberStyles.None, System.Globalization.CultureInfo.InvariantCulture, out var kept)
            || kept is < 1 or > Studio.LongestKeepYears)
        {
            problems.Add(new Problem("KeepYears", $"Write a number of years from 1 to {Studio.LongestKeepYears}."));
        }

        var whom = PlainText.Read(contact, "PrivacyContact", Studio.LongestContact, problems);
        var own = PlainText.Read(words, "PrivacyWords", Studio.LongestPrivacyWords, problems, severalLines: true);
        return ChangeAsync(actor, Keep, problems, studio => studio.Keep(kept, whom, own), version, operation, ct);
    }

    private async Task<Outcome<StudioView>> ChangeAsync(
        Actor actor, string verb, List<Problem> problems, Action<Studio> change, Guid version, OperationId operation, CancellationToken ct)
    {
        ArgumentNullException.ThrowIfNull(actor);
        var db = await databases.CreateDbContextAsync(ct).ConfigureAwait(false);
        await using var _ = db.ConfigureAwait(false);
        var studio = actor.IsOwner ? await db.Set<Studio>().SingleOrDefaultAsync(ct).ConfigureAwait(false) : null;
        if (studio is null)
        {
            return new Outcome<StudioView>.NotFound();
        }

        if (problems.Count > 0)
        {
            return new Outcome<StudioView>.Refused(problems);
        }

        var done = await db.WasDoneAsync(operation, verb, studio.FirstOwner.Value, ct).ConfigureAwait(false);
        if (!done)
        {
            var now = time.GetUtcNow();
            change(studio);
            db.ExpectVersion(studio, version);
            db.Note(operation, verb, studio.FirstOwner.Value, now);
            db.Tell(AuditEvent.StudioChanged, now, actor.Account.Value);
            done = await db.SaveUnlessDoneAsync(ct).ConfigureAwait(false)
                || await db.WasDoneAsync(operation, verb, studio.FirstOwner.Value, ct).ConfigureAwait(false);
        }

        var stands = (await Read(ct).ConfigureAwait(false))!;
        return done ? new Outcome<StudioView>.Done(stands) : new Outcome<StudioView>.Conflict(stands);
    }

    /// <summary>Settles who may come in without being invited, and from which age alone. Only for owners.</summary>
    /// <param name="actor">Who says it.</param>
    /// <param name="admission">What was typed.</param>
    /// <param name="version">The version that the form was opened on.</param>
    /// <param name="operation">The form's operation.</param>
    /// <param name="ct">Stops it.</param>
    public async Task<Outcome<StudioView>> AdmitAsync(Actor actor, Admission admission, Guid version, OperationId operation, CancellationToken ct)
    {
        ArgumentNullException.ThrowIfNull(actor);
        ArgumentNullException.ThrowIfNull(admission);
        var db = await databases.CreateDbContextAsync(ct).ConfigureAwait(false);
        await using var _ = db.ConfigureAwait(false);
        var studio = actor.IsOwner ? await db.Set<Studio>().SingleOrDefaultAsync(ct).ConfigureAwait(false) : null;
        if (studio is null)
        {
            return new Outcome<StudioView>.NotFound();
        }

        if (admission.Problems() is { Count: > 0 } problems)
        {
            return new Outcome<StudioView>.Refused(problems);
        }

        var done = await db.WasDoneAsync(operation, Admit, studio.FirstOwner.Value, ct).ConfigureAwait(false);
        if (!done)
        {
            admission.Settle(studio);
            db.ExpectVersion(studio, version);
            db.Note(operation, Admit, studio.FirstOwner.Value, time.GetUtcNow());
            db.Tell(AuditEvent.StudioChanged, time.GetUtcNow(), actor.Account.Value);
            done = await db.SaveUnlessDoneAsync(ct).ConfigureAwait(false)
                || await db.WasDoneAsync(operation, Admit, studio.FirstOwner.Value, ct).ConfigureAwait(false);
        }

        var stands = (await Read(ct).ConfigureAwait(false))!;
        return done ? new Outcome<StudioView>.Done(stands) : new Outcome<StudioView>.Conflict(stands);
    }

    private static string? Check(string? studioName, string? postTo, List<Problem> problems)
    {
        if (PersonName.ProblemWith(studioName) is { } wrong)
        {
            problems.Add(new Problem("StudioName", wrong));
        }

        return PlainText.Read(postTo, "PostTo", Studio.LongestPostTo, problems, severalLines: true);
    }
}

/// <summary>The studio as letters and pages show it.</summary>
/// <param name="Name">What it is called.</param>
/// <param name="OpenedAt">Since when.</param>
/// <param name="PostTo">The address that parcels are posted to, or null.</param>
/// <param name="Version">The version that a form was opened on.</param>
public sealed record StudioView(string Name, DateTimeOffset OpenedAt, string? PostTo, Guid Version)
{
    /// <summary>The address that people write mail to, or null.</summary>
    public string? WriteTo { get; init; }

    /// <summary>True when people may make a student's account without being invited.</summary>
    public bool SignUpOpen { get; init; }

    /// <summary>The age below which a guardian has to agree, in years; null until the owner has settled it.</summary>
    public int? ConsentAge { get; init; }

    /// <summary>How many years after the last sign of life a student's records are kept.</summary>
    public int KeepYears { get; init; }

    /// <summary>Whom to ask about what is kept.</summary>
    public string? PrivacyContact { get; init; }

    /// <summary>What the owner adds to the page about what is kept, in Markdown.</summary>
    public string? PrivacyWords { get; init; }
}

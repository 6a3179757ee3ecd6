using Microsoft.EntityFrameworkCore;
using ReedClinic.Data.Audit;
using ReedClinic.Data.Engine;
using ReedClinic.Data.Jobs;
using ReedClinic.Data.People;
using ReedClinic.Domain.Intake;
using ReedClinic.Domain.Outcomes;
using ReedClinic.Domain.People;

namespace ReedClinic.Data.Guardians;

/// <summary>Asking a guardian, and their answer by the link that was sent to them.</summary>
public sealed class GuardianBook(IDbContextFactory<ClinicDb> databases, TimeProvider time, AccountRegister register, Outbox outbox)
{
    /// <summary>How often guardians are written to for one student in 24 hours: our own choice, so that nobody is pestered.</summary>
    public const int MostAsksADay = 3;

    /// <summary>
    /// From how many mails in 24 hours on an address is written to only for a student who hasn't asked it that day, whichever
    /// students named it: our own choice. Nobody can use up the first question of somebody else.
    /// </summary>
    public const int MostAsksToOneADay = 6;

    private const string Ask = "ask-guardian";
    private const string Answer = "answer-as-guardian";

    /// <summary>Where the answer of the asking student's guardian stands; null for somebody who is no student.</summary>
    public async Task<GuardianView?> MineAsync(Actor actor, CancellationToken ct)
    {
        ArgumentNullException.ThrowIfNull(actor);
        var db = await databases.CreateDbContextAsync(ct).ConfigureAwait(false);
        await using var _ = db.ConfigureAwait(false);
        return await MineAsync(db, actor, ct).ConfigureAwait(false);
    }

    /// <summary>
    /// The student who asks names a guardian, who is sent a link. Asking anew withdraws the links that went out before. Once
    /// a guardian took their consent back, only they can give it again.
    /// </summary>
    public Task<Outcome<GuardianView>> AskAsync(Actor actor, string? name, string? email, OperationId operation, CancellationToken ct)
    {
        ArgumentNullException.ThrowIfNull(actor);
        operation = operation.OrFresh(time.GetUtcNow());
        outbox.Ready();
        return databases.PatientlyAsync((attempt, stop) => AskAsync(attempt, actor, name, email, operation, stop), ct);
    }

    private async Task<Outcome<GuardianView>> AskAsync(
        Attempt attempt, Actor actor, string? name, string? email, OperationId operation, CancellationToken ct)
    {
        var db = await databases.CreateDbContextAsync(ct).ConfigureAwait(false);
        await using var _ = db.ConfigureAwait(false);
        for (var tries = 1; tries <= DoneOperations.MostTries; tries++)
        {
            var transaction = await attempt.BeginAsync(db, ct).ConfigureAwait(false);
            await using var __ = transaction.ConfigureAwait(false);
            await HoldAsync(db, actor, ct).ConfigureAwait(false);
            if (await MineAsync(db, actor, ct).ConfigureAwait(false) is not { } stands)
            {
                return new Outcome<GuardianView>.NotFound();
            }

            var me = await db.Set<Student>().SingleAsync(person => person.Account == actor.Account, ct).ConfigureAwait(false);
            if (await db.WasDoneAsync(operation, Ask, me.Id.Value, ct).ConfigureAwait(false))
            {
                return new Outcome<GuardianView>.Done(stands);
            }

            var own = await db.Users.Where(user => user.Id == actor.Account.Value).Select(user => user.Email).SingleOrDefaultAsync(ct).ConfigureAwait(false);
            var problems = await CheckAsync(db, me.Id, stands, name, email, [me.Email, own], ct).ConfigureAwait(false);
            if (problems.Count > 0)
            {
                return new Outcome<GuardianView>.Refused(problems);
            }

            await PutAskAsync(db, me, PersonName.Read(name)!, EmailAddress.Read(email)!, ct).ConfigureAwait(false);
            db.Note(operation, Ask, me.Id.Value, time.GetUtcNow());
            if (await db.SaveUnlessDoneAsync(ct).ConfigureAwait(false))
            {
                await transaction.CommitAsync(ct).ConfigureAwait(false);
                return new Outcome<GuardianView>.Done((await MineAsync(db, actor, ct).ConfigureAwait(false))!);
            }
        }

        return new Outcome<GuardianView>.Refused([DoneOperations.NotSaved]);
    }

    // Questions of one student at one moment are counted one after the other.
    private static async Task HoldAsync(ClinicDb db, Actor actor, CancellationToken ct)
    {
        if (actor.Student is { } student)
        {
            await db.HoldAloneAsync(student, ct).ConfigureAwait(false);
        }
    }

    /// <summary>What a guardian's link asks; null when it is no good any more. Reading it changes nothing.</summary>
    public async Task<GuardianQuestion?> ReadAsync(string? secret, CancellationToken ct)
    {
        var db = await databases.CreateDbContextAsync(ct).ConfigureAwait(false);
        await using var _ = db.ConfigureAwait(false);
        if (await db.OpenQuestionAsync(secret, time.GetUtcNow(), ct).ConfigureAwait(false) is not { } open)
        {
            return null;
        }

        var studio = await db.Set<Studio>().AsNoTracking().SingleOrDefaultAsync(ct).ConfigureAwait(false);
        var folded = register.Fold(open.Ticket.Email);
        return new GuardianQuestion(
            studio?.Name ?? "",
            open.Student.FirstName,
            open.Guardianship.Name,
            open.Ticket.Email,
            await db.Users.AnyAsync(user => user.NormalizedEmail == folded, ct).ConfigureAwait(false),
            studio?.ConsentAge ?? ConsentAge.Usual,
            studio?.KeepYears ?? Studio.UsualKeepYears)
        {
            ReedsHere = await db.InHand(open.Student.Id).CountAsync(reed => reed.Fitness != Fitness.Mould, ct).ConfigureAwait(false),
            KeptApart = await db.InHand(open.Student.Id).CountAsync(reed => reed.Fitness == Fitness.Mould, ct).ConfigureAwait(false),
        };
    }

    /// <summary>A guardian who has no sign-in yet agrees, and makes one for the address that the link was sent to.</summary>
    public async Task<Outcome<AccountId>> AgreeNewAsync(string? secret, string? name, string? password, OperationId operation, CancellationToken ct)
    {
        if (await EmailOfAsync(secret, ct).ConfigureAwait(false) is not { } email)
        {
            return await RefuseLinkAsync(secret, ct).ConfigureAwait(false);
        }

        for (var tries = 1; ; tries++)
        {
            var outcome = await register.MakeAsync(
                new NewAccount(name, email, password),
                [],
                operation,
                async (db, account) =>
                {
                    account.EmailConfirmed = true; // a guardian's link is never handed over
                    return await AgreeAsync(db, secret, new AccountId(account.Id), ct).ConfigureAwait(false) is [];
                },
                ct).ConfigureAwait(false);

            // Somebody used the link at the same moment, or only saved the student: then the link is still good.
            if (outcome is not Outcome<AccountId>.NotFound || tries == DoneOperations.MostTries || await ReadAsync(secret, ct).ConfigureAwait(false) is null)
            {
                return outcome is Outcome<AccountId>.NotFound ? await RefuseLinkAsync(secret, ct).ConfigureAwait(false) : outcome;
            }
        }
    }

    /// <summary>A guardian who is signed in agrees. A student who is asked about can't be the one who answers.</summary>
    public async Task<Outcome<AccountId>> AgreeAsync(Actor actor, string? secret, OperationId operation, CancellationToken ct)
    {
        ArgumentNullException.ThrowIfNull(actor);
        var db = await databases.CreateDbContextAsync(ct).ConfigureAwait(false);
        await using var _ = db.ConfigureAwait(false);
        for (var tries = 1; tries <= DoneOperations.MostTries; tries++)
        {
            if (await db.WasDoneAsync(operation, Answer, actor.Account.Value, ct).ConfigureAwait(false))
            {
                return new Outcome<AccountId>.Done(actor.Account);
            }

            switch (await AgreeAsync(db, secret, actor.Account, ct).ConfigureAwait(false))
            {
                case null:
                    return await RefuseLinkAsync(secret, ct).ConfigureAwait(false);
                case { Count: > 0 } problems:
                    return new Outcome<AccountId>.Refused(problems);
            }

            db.Note(operation, Answer, actor.Account.Value, time.GetUtcNow());
            if (await db.SaveUnlessDoneAsync(ct).ConfigureAwait(false))
            {
                return new Outcome<AccountId>.Done(actor.Account);
            }
        }

        return new Outcome<AccountId>.Refused([DoneOperations.NotSaved]);
    }

    private async Task<Outcome<AccountId>> RefuseLinkAsync(string? secret, CancellationToken ct)
    {
        await databases.NoteRefusedLinkAsync(db => db.TicketOfAsync(secret, TicketPurpose.Guardian, ct), time.GetUtcNow(), ct).ConfigureAwait(false);
        return new Outcome<AccountId>.NotFound();
    }

    private async Task<string?> EmailOfAsync(string? secret, CancellationToken ct)
    {
        var db = await databases.CreateDbContextAsync(ct).ConfigureAwait(false);
        await using var _ = db.ConfigureAwait(false);

        // A link that was used still says whose it was, so that sending its form twice gives the first answer.
        return await db.TicketOfAsync(secret, TicketPurpose.Guardian, ct).ConfigureAwait(false) is { WithdrawnAt: null } ticket ? ticket.Email : null;
    }

    // Null when the link is no good; else what hinders, or nothing when it is done in this context.
    private async Task<IReadOnlyList<Problem>?> AgreeAsync(ClinicDb db, string? secret, AccountId account, CancellationToken ct)
    {
        if (await db.OpenQuestionAsync(secret, time.GetUtcNow(), ct).ConfigureAwait(false) is not { } open)
        {
            return null;
        }

        if (await db.MayNotAnswerAsync(account, open, ct).ConfigureAwait(false))
        {
            return [GuardianRules.NotForStudents];
        }

        var now = time.GetUtcNow();
        open.Ticket.Use(now);
        if (await db.Users.Where(user => user.Id == account.Value).Select(user => user.Email).SingleOrDefaultAsync(ct).ConfigureAwait(false) is { } theirs)
        {
            open.Guardianship.WriteTo(theirs); // who agrees is written to, whoever the question went to
        }

        await db.GiveAsync(open.Guardianship, open.Student, account, now, ct).ConfigureAwait(false);
        db.Tell(AuditEvent.LinkUsed, now, account.Value, about: open.Ticket.Id.Value);
        outbox.PutAnswered(db, open.Guardianship, open.Student, GuardianRules.Given, now, await db.WaitingAsync(open.Student.Id, ct).ConfigureAwait(false));
        return [];
    }

    private async Task<IReadOnlyList<Problem>> CheckAsync(ClinicDb db, StudentId me, GuardianView stands, string? name, string? email, IEnumerable<string?> ownAddresses, CancellationToken ct)
    {
        var problems = GuardianRules.Check(stands, name, email, ownAddresses);
        if (problems.Count > 0)
        {
            return problems;
        }

        var (folded, since) = (Folding.OfEmail(EmailAddress.Read(email)!), time.GetUtcNow().AddDays(-1));
        if (await db.SaidNoAsync(me, folded, since, ct).ConfigureAwait(false))
        {
            return [GuardianRules.SaidNo];
        }

        var asked = db.Set<Ticket>().Where(ticket => ticket.Purpose == TicketPurpose.Guardian && ticket.FoldedEmail == folded && ticket.MadeAt > since);
        var often = await asked.AnyAsync(ticket => ticket.Student == me, ct).ConfigureAwait(false)
            && await asked.CountAsync(ct).ConfigureAwait(false) >= MostAsksToOneADay;
        return often ? [GuardianRules.ToldOften] : [];
    }

    private async Task PutAskAsync(ClinicDb db, Student me, string name, string email, CancellationToken ct)
    {
        var now = time.GetUtcNow();
        foreach (var old in await db.Set<Ticket>().Where(row => row.Purpose == TicketPurpose.Guardian && row.Student == me.Id && row.UsedAt == null && row.WithdrawnAt == null)
            .ToListAsync(ct).ConfigureAwait(false))
        {
            old.Withdraw(now);
        }

        if (await db.Set<Guardianship>().SingleOrDefaultAsync(row => row.Student == me.Id, ct).ConfigureAwait(false) is { } asked)
        {
            asked.Ask(name, email, now);
        }
        else
        {
            db.Add(new Guardianship(new GuardianshipId(Guid.CreateVersion7(now)), me.Id, name, email, now));
        }

        me.Follow(Consent.Asked);
        var (ticket, secret) = Tickets.Make(TicketPurpose.Guardian, email, now, student: me.Id, madeBy: me.Account);
        db.Add(ticket);
        db.Tell(AuditEvent.ConsentAsked, now, me.Account?.Value, me.Id.Value, ticket.Id.Value);
        outbox.Put(db, new Mail(MailKind.GuardianAsked, email, name) { Secret = secret, Ward = me.FirstName, At = ticket.ExpiresAt, About = me.Id.Value }, GuardianRules.AskedOnce(ticket.Id));
    }

    private async Task<GuardianView?> MineAsync(ClinicDb db, Actor actor, CancellationToken ct)
    {
        if (await db.Set<Student>().AsNoTracking().SingleOrDefaultAsync(person => person.Account == actor.Account, ct).ConfigureAwait(false) is not { } me)
        {
            return null;
        }

        var since = time.GetUtcNow().AddDays(-1);
        var asked = await db.Set<Ticket>().CountAsync(row => row.Purpose == TicketPurpose.Guardian && row.Student == me.Id && row.MadeAt > since, ct).ConfigureAwait(false);
        var guardian = await db.Set<Guardianship>().AsNoTracking().SingleOrDefaultAsync(row => row.Student == me.Id && row.EndedAt == null, ct).ConfigureAwait(false);
        return new GuardianView(me.Age, me.Consent, guardian?.Name, guardian?.Email, guardian?.AskedAt, asked);
    }
}

using System.Collections.Concurrent;
using System.Data;
using System.Data.Common;
using Microsoft.EntityFrameworkCore;
using ReedClinic.Data.People;
using ReedClinic.Domain.Intake;
using ReedClinic.Domain.Letters;
using ReedClinic.Domain.People;
using ReedClinic.Domain.Recordings;

namespace ReedClinic.Data.Letters;

/// <summary>A letter that was sent, as it is shown, and who asked for it.</summary>
/// <param name="Person">Who asked, with the rights of this moment.</param>
/// <param name="Page">Its page, as UTF-8.</param>
/// <param name="Country">Where the student lives, in their own words, if they said: it tells the size of paper.</param>
public sealed record LetterAtHand(SignedInPerson Person, byte[] Page, string? Country);

/// <summary>
/// The pages of sent letters, kept as they are shown: the host's way to give one out with a single statement, which asks at
/// once whether the session lives, whose it is, and whether they may read this letter. It asks on connections that stay open:
/// making one ready takes longer than the statement itself.
/// </summary>
public sealed class LetterPageRegister(IDbContextFactory<ClinicDb> databases, SessionRegister sessions, TimeProvider time) : IAsyncDisposable
{
    /// <summary>So many connections stay open at most; when more read at once, the others are closed after use.</summary>
    public const int MostOpen = 8;

    private static readonly ConcurrentDictionary<Type, Func<ClinicDb, SessionId, BatchCode, bool, CancellationToken, Task<Found?>>> Asked = new();

    private readonly ConcurrentStack<Kept> _open = new();

    /// <summary>
    /// The newest sending's page; null when the session doesn't live, when it isn't theirs to read, when nothing was sent, or
    /// when its page isn't kept yet: whoever asks then goes the long way.
    /// </summary>
    /// <param name="id">The session, as the sealed cookie has it.</param>
    /// <param name="code">The batch.</param>
    /// <param name="ct">Stops it.</param>
    public async Task<LetterAtHand?> OpenAsync(SessionId id, BatchCode code, CancellationToken ct)
    {
        var now = time.GetUtcNow();
        if (await AskAsync(id, code, ct).ConfigureAwait(false) is not { } found || !found.Session.IsLive(now))
        {
            return null;
        }

        await sessions.SeenAsync(found.Session, ct).ConfigureAwait(false);
        var rights = new Rights(found.Session.Account, found.Name, found.Student, found.Teaches, found.Owns, [], HasSecondStep: true, found.Guards);
        return new(new SignedInPerson(rights.ToActor(found.Session, sessions.PasswordWillDo, now), found.Name, found.Session), found.Page, found.Country);
    }

    /// <summary>Keeps the page of a sending. One that is kept already stays; one that plays what was removed meanwhile isn't kept.</summary>
    /// <param name="code">The batch.</param>
    /// <param name="ordinal">Which sending.</param>
    /// <param name="page">The page, as UTF-8.</param>
    /// <param name="heard">What it plays and shows of what was attached.</param>
    /// <param name="ct">Stops it.</param>
    public async Task KeepAsync(BatchCode code, int ordinal, byte[] page, IReadOnlyCollection<RecordingId> heard, CancellationToken ct)
    {
        var db = await databases.CreateDbContextAsync(ct).ConfigureAwait(false);
        await using var _ = db.ConfigureAwait(false);
        ArgumentNullException.ThrowIfNull(heard);
        var here = db.Set<LetterSending>().Where(sending => sending.Ordinal == ordinal && db.Set<Batch>().Any(batch => batch.Id == sending.Batch && batch.Code == code));
        await here.Where(sending => sending.Page == null).ExecuteUpdateAsync(row => row.SetProperty(sending => sending.Page, page), ct).ConfigureAwait(false);

        // Whoever removes a recording writes to this row in the same save, so that one of the two comes after the other and sees it.
        var ids = heard.ToList();
        if (ids.Count > 0 && await db.Set<Recording>().CountAsync(recording => ids.Contains(recording.Id), ct).ConfigureAwait(false) < ids.Count)
        {
            await here.ExecuteUpdateAsync(row => row.SetProperty(sending => sending.Page, (byte[]?)null), ct).ConfigureAwait(false);
        }
    }

    /// <summary>Closes what is open.</summary>
    public async ValueTask DisposeAsync()
    {
        foreach (var kept in _open)
        {
            await kept.Db.DisposeAsync().ConfigureAwait(false);
        }

        _open.Clear();
    }

    // A connection that stayed open may have died with its server meanwhile: that is found out by asking, and another one asks again.
    private async Task<Found?> AskAsync(SessionId id, BatchCode code, CancellationToken ct)
    {
        while (_open.TryPop(out var kept))
        {
            var (found, answered) = await TryAsync(kept.Db, id, code, ct).ConfigureAwait(false);
            if (answered)
            {
                return found;
            }
        }

        var db = await databases.CreateDbContextAsync(ct).ConfigureAwait(false);
        return await AskAsync(db, id, code, ct).ConfigureAwait(false);
    }

    private async Task<(Found? Found, bool Answered)> TryAsync(ClinicDb db, SessionId id, BatchCode code, CancellationToken ct)
    {
        try
        {
            return (await AskAsync(db, id, code, ct).ConfigureAwait(false), true);
        }
        catch (Exception trouble) when (trouble is DbException or { InnerException: DbException })
        {
            return (null, false);
        }
    }

    // One that failed, or was given up half way, isn't used again.
    private async Task<Found?> AskAsync(ClinicDb db, SessionId id, BatchCode code, CancellationToken ct)
    {
        var whole = false;
        try
        {
            if (db.Database.GetDbConnection().State != ConnectionState.Open)
            {
                await db.Database.OpenConnectionAsync(ct).ConfigureAwait(false);
            }

            var found = await Asked.GetOrAdd(db.GetType(), static _ => Compile())(db, id, code, sessions.PasswordWillDo, ct).ConfigureAwait(false);
            whole = true;
            return found;
        }
        finally
        {
            if (whole && _open.Count < MostOpen)
            {
                _open.Push(new(db));
            }
            else
            {
                await db.DisposeAsync().ConfigureAwait(false);
            }
        }
    }

    // Read as one statement. The rights are those of Rights and BatchQueries.SeenBy; a test holds them to each other.
    private static Func<ClinicDb, SessionId, BatchCode, bool, CancellationToken, Task<Found?>> Compile()
    {
        var teacher = ClinicAccountConfiguration.IdOf(Role.Teacher);
        var owner = ClinicAccountConfiguration.IdOf(Role.Owner);
        return EF.CompileAsyncQuery((ClinicDb db, SessionId id, BatchCode code, bool anyWay, CancellationToken ct) => (
            from session in db.Set<Session>().AsNoTracking()
            where session.Id == id && session.EndedAt == null
            from user in db.Users
            where user.Id == (Guid)(object)session.Account && user.DisabledAt == null
            from batch in db.Set<Batch>()
            where batch.Code == code
            join letter in db.Set<Letter>() on batch.Id equals letter.Batch
            join sending in db.Set<LetterSending>() on new { letter.Batch, Ordinal = letter.SentOrdinal } equals new { sending.Batch, sending.Ordinal }
            join student in db.Set<Student>() on batch.Student equals student.Id
            where sending.Page != null
                && (student.Account == session.Account
                    || db.Set<Guardianship>().Any(guardian => guardian.Account == session.Account && guardian.Student == batch.Student
                        && guardian.GivenAt != null && guardian.WithdrawnAt == null && guardian.EndedAt == null)
                    || ((anyWay || session.Way == SignInWay.PasswordAndCode || session.Way == SignInWay.PasswordAndRecoveryCode || session.Way == SignInWay.Passkey)
                        && db.UserRoles.Any(held => held.UserId == user.Id && (held.RoleId == teacher || held.RoleId == owner))))
            select new Found(
                session,
                user.DisplayName,
                db.Set<Student>().Where(person => person.Account == session.Account).Select(person => (StudentId?)person.Id).FirstOrDefault(),
                db.UserRoles.Any(held => held.UserId == user.Id && held.RoleId == teacher),
                db.UserRoles.Any(held => held.UserId == user.Id && held.RoleId == owner),
                db.Set<Guardianship>().Any(guardian => guardian.Account == session.Account && guardian.GivenAt != null && guardian.EndedAt == null),
                sending.Page!,
                student.Country)).SingleOrDefault());
    }

    private sealed record Kept(ClinicDb Db);

    private sealed record Found(Session Session, string Name, StudentId? Student, bool Teaches, bool Owns, bool Guards, byte[] Page, string? Country);
}

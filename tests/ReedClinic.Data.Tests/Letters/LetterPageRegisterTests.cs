using System.Diagnostics;
using System.Text;
using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Diagnostics;
using Npgsql;
using ReedClinic.Data.Letters;
using ReedClinic.Data.People;
using ReedClinic.Domain.Letters;
using ReedClinic.Domain.People;
using ReedClinic.Domain.Recordings;
using static ReedClinic.Data.Tests.Intake.IntakeScene;

namespace ReedClinic.Data.Tests.Letters;

public sealed class LetterPageRegisterTests(TestDatabases databases) : IClassFixture<TestDatabases>
{
    [Theory, OnBothEngines]
    public async Task A_page_is_read_with_its_readers_rights_by_one_statement(ClinicEngine engine)
    {
        using var counted = new Statements(); // before the connection that stays open: it asks only now and then whether anybody watches
        var scene = await LetterScene.OfAsync(await databases.FreshAsync(engine));
        await scene.SentAsync();
        var sessions = new SessionRegister(scene.Db, TimeProvider.System);
        await using var register = new LetterPageRegister(scene.Db, sessions, TimeProvider.System);
        var session = await SignedInAsync(scene, sessions);
        Assert.Null(await register.OpenAsync(session, scene.Code, Ct));
        await register.KeepAsync(scene.Code, 1, "one"u8.ToArray(), [], Ct);
        await register.KeepAsync(scene.Code, 1, "two"u8.ToArray(), [], Ct);

        var before = counted.Count;
        var found = (await register.OpenAsync(session, scene.Code, Ct))!;

        Assert.Equal(1, counted.Count - before);
        Assert.Equal("one", Encoding.UTF8.GetString(found.Page));
        Assert.Equal(scene.Batch.Student, found.Person.Actor.Student);
        Assert.False(found.Person.Actor.WorksHere);
        var other = await LetterScene.OfAsync(scene.Db);
        await other.SentAsync();
        await register.KeepAsync(other.Code, 1, "theirs"u8.ToArray(), [], Ct);
        Assert.Null(await register.OpenAsync(session, other.Code, Ct));
        await sessions.EndAsync(session, Ct);
        Assert.Null(await register.OpenAsync(session, scene.Code, Ct));
    }

    [Theory, OnBothEngines]
    public async Task A_page_that_is_kept_goes_or_stays_but_never_becomes_another(ClinicEngine engine)
    {
        var scene = await LetterScene.OfAsync(await databases.FreshAsync(engine));
        await scene.SentAsync();
        await using var db = scene.Db.CreateDbContext();
        var rows = db.Set<LetterSending>().Where(row => row.Batch == scene.Batch.Id);
        await rows.ExecuteUpdateAsync(row => row.SetProperty(sending => sending.Page, "one"u8.ToArray()), Ct);

        await Assert.ThrowsAnyAsync<System.Data.Common.DbException>(() => rows.ExecuteUpdateAsync(row => row.SetProperty(sending => sending.Page, "two"u8.ToArray()), Ct));

        Assert.Equal(1, await rows.ExecuteUpdateAsync(row => row.SetProperty(sending => sending.Page, (byte[]?)null), Ct));
    }

    [Theory, OnBothEngines]
    public async Task A_connection_that_died_while_it_stayed_open_is_replaced_unseen(ClinicEngine engine)
    {
        var scene = await LetterScene.OfAsync(await databases.FreshAsync(engine));
        await scene.SentAsync();
        var sessions = new SessionRegister(scene.Db, TimeProvider.System);
        await using var register = new LetterPageRegister(scene.Db, sessions, TimeProvider.System);
        var session = await SignedInAsync(scene, sessions);
        await register.KeepAsync(scene.Code, 1, "one"u8.ToArray(), [], Ct);
        Assert.NotNull(await register.OpenAsync(session, scene.Code, Ct));

        await using var db = scene.Db.CreateDbContext();
        if (db.Database.GetDbConnection() is NpgsqlConnection connection)
        {
            NpgsqlConnection.ClearPool(connection); // what nobody holds; the one that stays open is held
            Assert.Equal(1, await db.Database.SqlQuery<int>(
                $"select count(pg_terminate_backend(pid))::int as \"Value\" from pg_stat_activity where datname = current_database() and pid <> pg_backend_pid()").SingleAsync(Ct));
        }

        Assert.NotNull(await register.OpenAsync(session, scene.Code, Ct));
    }

    [Theory, OnBothEngines]
    public async Task A_page_that_plays_what_was_removed_meanwhile_is_not_kept(ClinicEngine engine)
    {
        var scene = await LetterScene.OfAsync(await databases.FreshAsync(engine));
        await scene.SentAsync();
        await using var register = new LetterPageRegister(scene.Db, new SessionRegister(scene.Db, TimeProvider.System), TimeProvider.System);

        await register.KeepAsync(scene.Code, 1, "one"u8.ToArray(), [new RecordingId(Guid.CreateVersion7(TimeProvider.System.GetUtcNow()))], Ct);

        await using var db = scene.Db.CreateDbContext();
        Assert.Null((await db.Set<LetterSending>().SingleAsync(row => row.Batch == scene.Batch.Id, Ct)).Page);
    }

    // A student with a sign-in of their own.
    private static async Task<SessionId> SignedInAsync(LetterScene scene, SessionRegister sessions)
    {
        var account = new AccountId(Guid.CreateVersion7(TimeProvider.System.GetUtcNow()));
        await using var db = scene.Db.CreateDbContext();
        db.Add(new ClinicAccount { Id = account.Value, DisplayName = "Ines", UserName = "ines", NormalizedUserName = $"INES{account.Value:N}" });
        await db.SaveChangesAsync(Ct);
        await db.Set<Student>().Where(row => row.Id == scene.Batch.Student).ExecuteUpdateAsync(row => row.SetProperty(student => student.Account, account), Ct);
        return (await sessions.BeginAsync(account, SignInWay.Password, "a browser", null, Ct))!.Value;
    }

    private sealed class Statements : IObserver<DiagnosticListener>, IObserver<KeyValuePair<string, object?>>, IDisposable
    {
        private readonly AsyncLocal<bool> _mine = new() { Value = true };
        private readonly List<IDisposable> _watched = [];

        public Statements() => _watched.Add(DiagnosticListener.AllListeners.Subscribe(this));

        public int Count { get; private set; }

        public void OnNext(DiagnosticListener value)
        {
            if (value.Name == DbLoggerCategory.Name)
            {
                _watched.Add(value.Subscribe(this));
            }
        }

        public void OnNext(KeyValuePair<string, object?> value)
        {
            if (_mine.Value && value.Key == RelationalEventId.CommandExecuting.Name)
            {
                Count++;
            }
        }

        public void OnCompleted()
        {
        }

        public void OnError(Exception error)
        {
        }

        public void Dispose()
        {
            foreach (var one in _watched)
            {
                one.Dispose();
            }
        }
    }
}

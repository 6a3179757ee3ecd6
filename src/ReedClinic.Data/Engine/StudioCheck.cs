using Microsoft.Data.Sqlite;
using Microsoft.EntityFrameworkCore;
using Npgsql;
using ReedClinic.Data.Demo;
using ReedClinic.Data.People;
using ReedClinic.Domain.People;

namespace ReedClinic.Data.Engine;

/// <summary>
/// What in the database itself speaks against letting people in: how it is set up, and what in it isn't settled. Each finding
/// is one sentence that says what to do.
/// </summary>
public sealed class StudioCheck(IDbContextFactory<ClinicDb> databases)
{
    /// <summary>Looks.</summary>
    /// <param name="ct">Stops it.</param>
    public async Task<IReadOnlyList<CheckFinding>> LookAsync(CancellationToken ct)
    {
        var db = await databases.CreateDbContextAsync(ct).ConfigureAwait(false);
        await using var _ = db.ConfigureAwait(false);
        if (!await db.Database.CanConnectAsync(ct).ConfigureAwait(false))
        {
            return [new("database-unreachable", "The database can’t be reached, so what stands in it wasn’t looked at. Start it, or put ConnectionStrings:Clinic right.")];
        }

        if (await ClinicSchema.NewerAsync(db.Database, ct).ConfigureAwait(false) is { } unknown)
        {
            return [.. await OfEngineAsync(db, ct).ConfigureAwait(false), new("database-ahead", new NewerSchemaException(unknown).Message)];
        }

        if ((await db.Database.GetPendingMigrationsAsync(ct).ConfigureAwait(false)).Any())
        {
            return [.. await OfEngineAsync(db, ct).ConfigureAwait(false), new("database-behind", "The database lacks a migration of this build. Start the program once; it brings the database up to date.")];
        }

        return [.. await OfEngineAsync(db, ct).ConfigureAwait(false), .. await OfStudioAsync(db, ct).ConfigureAwait(false)];
    }

    private static async Task<List<CheckFinding>> OfStudioAsync(ClinicDb db, CancellationToken ct)
    {
        List<CheckFinding> found = [];
        var studio = await db.Set<Studio>().AsNoTracking().SingleOrDefaultAsync(ct).ConfigureAwait(false);
        if (studio is null)
        {
            found.Add(new("no-owner", "The studio has no owner yet: whoever reads the console can become it. Open /first-run before anybody else is let in."));
        }
        else if (studio.ConsentAge is null)
        {
            found.Add(new("consent-age", "Nobody has settled below which age a guardian has to agree. Look up what local law says and set it on the studio’s page."));
        }

        var demo = DemoPeople.All.Select(person => person.Email).ToList();
        if (await db.Users.AnyAsync(account => demo.Contains(account.Email!), ct).ConfigureAwait(false))
        {
            found.Add(new("demo-accounts", "Accounts of the demo are in this database, and their password is known to everybody. Begin with an empty database."));
        }

        var (teacher, owner) = (ClinicAccountConfiguration.IdOf(Role.Teacher), ClinicAccountConfiguration.IdOf(Role.Owner));
        var open = await db.Users.CountAsync(
            account => account.DisabledAt == null && account.CodeSince == null && !db.UserPasskeys.Any(key => key.UserId == account.Id)
                && db.UserRoles.Any(held => held.UserId == account.Id && (held.RoleId == teacher || held.RoleId == owner)),
            ct).ConfigureAwait(false);
        if (open > 0)
        {
            found.Add(new("second-step", $"{open} of those who work here have neither a passkey nor codes yet. They can’t work before they have; ask them to sign in once."));
        }

        return found;
    }

    private static async Task<List<CheckFinding>> OfEngineAsync(ClinicDb db, CancellationToken ct) => db is PostgresClinicDb
        ? await OfPostgresAsync(db, ct).ConfigureAwait(false)
        : OfSqlite(db);

    private static List<CheckFinding> OfSqlite(ClinicDb db)
    {
        var file = new SqliteConnectionStringBuilder(db.Database.GetConnectionString()).DataSource;
        const UnixFileMode Others = UnixFileMode.OtherRead | UnixFileMode.OtherWrite;
        return !OperatingSystem.IsWindows() && File.Exists(file) && (File.GetUnixFileMode(file) & Others) != 0
            ? [new("file-readable", $"Everybody on this machine can read the database. Take that away: chmod o-rwx on {Path.GetFileName(file)} and its folder.")]
            : [];
    }

    private static async Task<List<CheckFinding>> OfPostgresAsync(ClinicDb db, CancellationToken ct)
    {
        List<CheckFinding> found = [];
        foreach (var setting in new[] { "fsync", "full_page_writes", "synchronous_commit" })
        {
            var value = await db.Database.SqlQuery<string>($"SELECT current_setting({setting}) AS \"Value\"").SingleAsync(ct).ConfigureAwait(false);
            if (value == "off")
            {
                found.Add(new($"postgres-{setting}", $"PostgreSQL’s {setting} is off: what was said to be saved may be lost in a power cut. Set it to on."));
            }
        }

        if (await db.Database.SqlQuery<bool>($"SELECT rolsuper AS \"Value\" FROM pg_roles WHERE rolname = current_user").SingleAsync(ct).ConfigureAwait(false))
        {
            found.Add(new("postgres-superuser", "The program signs in to PostgreSQL as a superuser. Give it a role of its own that owns its database and nothing else."));
        }

        var connection = new NpgsqlConnectionStringBuilder(db.Database.GetConnectionString());
        if (connection.SslMode is not (SslMode.VerifyFull or SslMode.VerifyCA) && !IsHere(connection.Host))
        {
            found.Add(new("postgres-tls", "PostgreSQL is on another machine, and the way there isn’t checked. Add SSL Mode=VerifyFull and a Root Certificate to the connection string."));
        }

        return found;
    }

    private static bool IsHere(string? host) =>
        string.IsNullOrEmpty(host) || host[0] == '/' || host == "localhost" || (System.Net.IPAddress.TryParse(host, out var address) && System.Net.IPAddress.IsLoopback(address));
}

/// <summary>Something that speaks against letting people in.</summary>
/// <param name="Name">A short name of ours, the same in every language.</param>
/// <param name="Words">What is wrong and what to do, in a sentence or two.</param>
public sealed record CheckFinding(string Name, string Words);

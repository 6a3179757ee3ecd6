using System.ComponentModel;
using System.Diagnostics;
using Npgsql;
using ReedClinic.Data.Backups;

namespace ReedClinic.Data.Engine;

/// <summary>PostgreSQL's own programs, each started with a list of arguments; the password goes by the environment.</summary>
/// <param name="folder">Where they lie; null to look for them as a shell does.</param>
internal sealed class PostgresTools(string? folder)
{
    /// <summary>Runs one to its end.</summary>
    /// <returns>What it printed.</returns>
    /// <exception cref="BackupTroubleException">It can't be started, or failed.</exception>
    public async Task<string> RunAsync(string tool, NpgsqlConnectionStringBuilder? where, IEnumerable<string> arguments, CancellationToken ct)
    {
        using var process = Start(tool, where, arguments, input: false);
        using var stop = ct.Register(() => Kill(process));
        var said = await Task.WhenAll(process.StandardOutput.ReadToEndAsync(CancellationToken.None), process.StandardError.ReadToEndAsync(CancellationToken.None)).ConfigureAwait(false);
        await process.WaitForExitAsync(CancellationToken.None).ConfigureAwait(false);
        ct.ThrowIfCancellationRequested();
        return process.ExitCode == 0 ? said[0] : throw Failed(tool, said[1]);
    }

    /// <summary>
    /// Puts an archive into a database in one transaction: what was there goes, what the archive holds comes, or nothing at
    /// all happens. The word that ends the transaction is only said once the whole archive was read.
    /// </summary>
    public async Task PutAsync(string archive, NpgsqlConnectionStringBuilder where, CancellationToken ct)
    {
        using var reading = Start("pg_restore", null, ["--no-owner", "--no-privileges", "--file=-", archive], input: false);
        using var writing = Start("psql", where, ["--no-psqlrc", "--quiet", "--set=ON_ERROR_STOP=1", "--output=/dev/null", "--file=-"], input: true);
        using var stop = ct.Register(() =>
        {
            Kill(reading);
            Kill(writing);
        });
        var (readingSaid, writingSaid) = (reading.StandardError.ReadToEndAsync(CancellationToken.None), writing.StandardError.ReadToEndAsync(CancellationToken.None));
        var printed = writing.StandardOutput.ReadToEndAsync(CancellationToken.None);
        var whole = await PourAsync(reading, writing, ct).ConfigureAwait(false);
        await writing.WaitForExitAsync(CancellationToken.None).ConfigureAwait(false);
        await reading.WaitForExitAsync(CancellationToken.None).ConfigureAwait(false);
        ct.ThrowIfCancellationRequested();
        await printed.ConfigureAwait(false);
        if (writing.ExitCode != 0 || !whole)
        {
            throw Failed("psql", await writingSaid.ConfigureAwait(false));
        }

        if (reading.ExitCode != 0)
        {
            throw Failed("pg_restore", await readingSaid.ConfigureAwait(false));
        }
    }

    // False when the one that writes has gone before the end; what it said tells why.
    private static async Task<bool> PourAsync(Process reading, Process writing, CancellationToken ct)
    {
        try
        {
            await writing.StandardInput.WriteLineAsync(Clearing.AsMemory(), ct).ConfigureAwait(false);
            await writing.StandardInput.FlushAsync(ct).ConfigureAwait(false);
            await reading.StandardOutput.BaseStream.CopyToAsync(writing.StandardInput.BaseStream, ct).ConfigureAwait(false);
            await reading.WaitForExitAsync(ct).ConfigureAwait(false);
            if (reading.ExitCode == 0)
            {
                await writing.StandardInput.WriteLineAsync("COMMIT;".AsMemory(), ct).ConfigureAwait(false);
            }

            writing.StandardInput.Close();
            return true;
        }
        catch (IOException)
        {
            Kill(reading);
            return false;
        }
    }

    // Everything of the studio's own in the schema that PostgreSQL gives each database.
    private const string Clearing = """
        BEGIN;
        SET LOCAL lock_timeout = '10s';
        SET LOCAL client_min_messages = 'warning';
        DO $clearing$
        DECLARE thing record;
        BEGIN
          FOR thing IN SELECT format('DROP TABLE IF EXISTS public.%I CASCADE', tablename) AS command FROM pg_tables WHERE schemaname = 'public' LOOP EXECUTE thing.command; END LOOP;
          FOR thing IN SELECT format('DROP SEQUENCE IF EXISTS public.%I CASCADE', sequencename) AS command FROM pg_sequences WHERE schemaname = 'public' LOOP EXECUTE thing.command; END LOOP;
          FOR thing IN SELECT format('DROP FUNCTION IF EXISTS %s CASCADE', oid::regprocedure) AS command FROM pg_proc
            WHERE pronamespace = 'public'::regnamespace AND NOT EXISTS (SELECT 1 FROM pg_depend WHERE objid = pg_proc.oid AND deptype = 'e') LOOP EXECUTE thing.command; END LOOP;
        END $clearing$;
        """;

    private Process Start(string tool, NpgsqlConnectionStringBuilder? where, IEnumerable<string> arguments, bool input)
    {
        var start = new ProcessStartInfo(folder is null ? tool : Path.Combine(folder, tool), arguments)
        {
            RedirectStandardInput = input,
            RedirectStandardOutput = true,
            RedirectStandardError = true,
        };
        foreach (var (name, value) in Environment(where).Where(pair => pair.Value is { Length: > 0 }))
        {
            start.Environment[name] = value;
        }

        try
        {
            return Process.Start(start)!;
        }
        catch (Win32Exception trouble)
        {
            throw new BackupTroubleException($"{tool} can’t be started ({trouble.Message}). Install PostgreSQL’s client programs of the server’s version or a newer one, or name their folder in {BackupSettings.ToolsKey}.", trouble);
        }
    }

    private static IEnumerable<(string Name, string? Value)> Environment(NpgsqlConnectionStringBuilder? where) => where is null ? [] :
    [
        ("PGHOST", where.Host),
        ("PGPORT", where.Port.ToString(System.Globalization.CultureInfo.InvariantCulture)),
        ("PGUSER", where.Username),
        ("PGPASSWORD", where.Password),
        ("PGDATABASE", where.Database),
        ("PGPASSFILE", where.Passfile),
        ("PGSSLROOTCERT", where.RootCertificate),
        ("PGSSLMODE", where.SslMode switch
        {
            SslMode.Disable => "disable",
            SslMode.Allow => "allow",
            SslMode.Require => "require",
            SslMode.VerifyCA => "verify-ca",
            SslMode.VerifyFull => "verify-full",
            _ => "prefer",
        }),
        ("PGAPPNAME", "reedclinic-backup"),
    ];

    private static void Kill(Process process)
    {
        if (!process.HasExited)
        {
            process.Kill();
        }
    }

    private static BackupTroubleException Failed(string tool, string said)
    {
        var last = said.Split('\n', StringSplitOptions.RemoveEmptyEntries | StringSplitOptions.TrimEntries);
        return new($"{tool} failed: {(last.Length > 0 ? string.Join(" ", last.TakeLast(2)) : "it said nothing")}");
    }
}

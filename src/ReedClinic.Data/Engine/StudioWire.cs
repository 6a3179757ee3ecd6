using System.Security.Cryptography;
using System.Threading.Channels;
using Microsoft.EntityFrameworkCore;
using Npgsql;
using ReedClinic.Data.Bench;
using ReedClinic.Data.Jobs;
using ReedClinic.Domain.Reeds;

namespace ReedClinic.Data.Engine;

/// <summary>
/// Carries news between the processes of one studio, by PostgreSQL's LISTEN and NOTIFY: that something was written in a reed's
/// log, that a word on a cause is among it, that the counts of causes began anew, and that there is work. It carries no content and promises nothing: who is told reads from the database, and whoever
/// wasn't told finds out at the next slow look. SQLite's file has one process, which needs none of this.
/// </summary>
public sealed class StudioWire : IDisposable
{
    private const string Name = "reedclinic";
    private const string Work = "work";
    private const string Counts = "counts";
    private const string Judged = "judged";
    private const string Written = "reed ";
    private const int MostWaiting = 1_000;
    private const int SecondsBetweenSignsOfLife = 10;

    private readonly string _me = Convert.ToHexStringLower(RandomNumberGenerator.GetBytes(8));
    private readonly IDbContextFactory<ClinicDb> _databases;
    private readonly BenchNews _news;
    private readonly JobBell _bell;
    private readonly TaskCompletionSource _hearing = new(TaskCreationOptions.RunContinuationsAsynchronously);
    private readonly Channel<string> _out = Channel.CreateBounded<string>(new BoundedChannelOptions(MostWaiting) { FullMode = BoundedChannelFullMode.DropOldest });

    /// <summary>Listens to this process from now on.</summary>
    /// <param name="databases">The studio's records.</param>
    /// <param name="news">What was written, in this process.</param>
    /// <param name="bell">What work there is, in this process.</param>
    public StudioWire(IDbContextFactory<ClinicDb> databases, BenchNews news, JobBell bell)
    {
        ArgumentNullException.ThrowIfNull(news);
        ArgumentNullException.ThrowIfNull(bell);
        (_databases, _news, _bell) = (databases, news, bell);
        news.Told += Say;
        news.CountsBegan += SayCounts;
        news.CauseJudged += SayJudged;
        bell.Rung += SayWork;
    }

    /// <summary>Over once it hears for the first time, or once it is known that one process is alone.</summary>
    public Task Hearing => _hearing.Task;

    /// <summary>Carries until it is stopped or the connection breaks. Where the engine is SQLite it ends at once.</summary>
    /// <param name="listening">Called once it hears.</param>
    /// <param name="ct">Stops it.</param>
    public async Task RunAsync(Action listening, CancellationToken ct)
    {
        ArgumentNullException.ThrowIfNull(listening);
        if (await WhereAsync(ct).ConfigureAwait(false) is not { } where)
        {
            _hearing.TrySetResult();
            return;
        }

        var connection = new NpgsqlConnection(where);
        await using var _ = connection.ConfigureAwait(false);
        connection.Notification += (_, heard) => Hear(heard.Payload);
        await connection.OpenAsync(ct).ConfigureAwait(false);
        var listen = new NpgsqlCommand($"LISTEN {Name}", connection);
        await using (listen.ConfigureAwait(false))
        {
            await listen.ExecuteNonQueryAsync(ct).ConfigureAwait(false);
        }

        _news.TellAll(); // whatever was said while nobody listened
        _bell.Ring();
        listening();
        _hearing.TrySetResult();
        using var either = CancellationTokenSource.CreateLinkedTokenSource(ct);
        var (hearing, saying) = (HearAsync(connection, either.Token), SayAsync(either.Token));
        await Task.WhenAny(hearing, saying).ConfigureAwait(false);
        await either.CancelAsync().ConfigureAwait(false);
        await Task.WhenAll(hearing, saying).ConfigureAwait(false);
    }

    /// <inheritdoc />
    public void Dispose()
    {
        _news.Told -= Say;
        _news.CountsBegan -= SayCounts;
        _news.CauseJudged -= SayJudged;
        _bell.Rung -= SayWork;
    }

    private void Say(ReedId reed) => _out.Writer.TryWrite($"{Written}{reed.Value:N}");

    private void SayCounts() => _out.Writer.TryWrite(Counts);

    private void SayJudged() => _out.Writer.TryWrite(Judged);

    private void SayWork() => _out.Writer.TryWrite(Work);

    private void Hear(string said)
    {
        if (said.StartsWith(_me, StringComparison.Ordinal))
        {
            return;
        }

        var what = said[(said.IndexOf(':', StringComparison.Ordinal) + 1)..];
        if (what == Work)
        {
            _bell.Ring();
        }
        else if (what == Counts)
        {
            _news.TellAll();
        }
        else if (what == Judged)
        {
            _news.TellJudgedHere();
        }
        else if (what.StartsWith(Written, StringComparison.Ordinal) && Guid.TryParseExact(what.AsSpan(Written.Length), "N", out var reed))
        {
            _news.TellHere(new ReedId(reed));
        }
    }

    private static async Task HearAsync(NpgsqlConnection connection, CancellationToken ct)
    {
        while (true)
        {
            await connection.WaitAsync(ct).ConfigureAwait(false);
        }
    }

    private async Task SayAsync(CancellationToken ct)
    {
        var waiting = new HashSet<string>(StringComparer.Ordinal);
        while (await _out.Reader.WaitToReadAsync(ct).ConfigureAwait(false))
        {
            waiting.Clear();
            while (_out.Reader.TryRead(out var what))
            {
                waiting.Add(what);
            }

            var db = await _databases.CreateDbContextAsync(ct).ConfigureAwait(false);
            await using var _ = db.ConfigureAwait(false);
            foreach (var what in waiting)
            {
                var said = $"{_me}:{what}";
                await db.Database.ExecuteSqlAsync($"SELECT pg_notify({Name}, {said})", ct).ConfigureAwait(false);
            }
        }
    }

    private async Task<string?> WhereAsync(CancellationToken ct)
    {
        var db = await _databases.CreateDbContextAsync(ct).ConfigureAwait(false);
        await using var _ = db.ConfigureAwait(false);
        return db is PostgresClinicDb
            ? new NpgsqlConnectionStringBuilder(db.Database.GetConnectionString()) { Pooling = false, KeepAlive = SecondsBetweenSignsOfLife }.ToString()
            : null;
    }
}

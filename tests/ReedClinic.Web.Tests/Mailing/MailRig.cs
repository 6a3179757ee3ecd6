using System.Diagnostics.Metrics;
using System.Reflection;
using Microsoft.AspNetCore.DataProtection;
using Microsoft.EntityFrameworkCore;
using Microsoft.Extensions.DependencyInjection;
using Microsoft.Extensions.Localization;
using Microsoft.Extensions.Logging.Abstractions;
using Microsoft.Extensions.Options;
using Microsoft.Extensions.Time.Testing;
using ReedClinic.Data;
using ReedClinic.Data.Jobs;
using ReedClinic.Web.Background;
using ReedClinic.Web.Mailing;
using ReedClinic.Web.Shared.Insight;

namespace ReedClinic.Web.Tests.Mailing;

/// <summary>The mail's way from the database to a server, with a clock that a test winds.</summary>
internal sealed class MailRig : IAsyncDisposable
{
    private readonly TestDatabase _db;
    private readonly List<MailSender> _senders = [];
    private readonly ServiceProvider _metered = new ServiceCollection().AddMetrics().BuildServiceProvider();
    private readonly WorkerStandings _standings;

    public MailRig(TestDatabase db, MailSettings settings)
    {
        (_db, Settings) = (db, settings);
        _standings = new WorkerStandings(Clock);
        Board = new JobBoard(db, Clock);
        Outbox = new Outbox(db.Services.GetRequiredService<IDataProtectionProvider>(), Clock, new OutboxSettings());
    }

    public FakeTimeProvider Clock { get; } = new(new DateTimeOffset(2026, 3, 28, 9, 30, 0, TimeSpan.Zero));

    public MailSettings Settings { get; }

    public JobBoard Board { get; }

    public Outbox Outbox { get; }

    public MailBook Mails => new(_db);

    public static MailSettings To(MailSink sink, bool trusted = true) => new()
    {
        Host = "localhost",
        Port = sink.Port,
        From = "reeds@harbour.example",
        ReplyTo = "ilse@harbour.example",
        Authority = trusted ? sink.Authority : null,
        Address = new Uri("https://reeds.harbour.example"),
    };

    public static MailWords Words(MailSettings settings, TimeProvider clock) => new(
        new StringLocalizer<MailText>(new ResourceManagerStringLocalizerFactory(Options.Create(new LocalizationOptions()), NullLoggerFactory.Instance)),
        new MailPost(settings, null!), clock);

    public MailWriter Writer() => new(Settings, Words(Settings, Clock), Clock);

    public MailWorker Worker(JobBell? bell = null, IDbContextFactory<ClinicDb>? databases = null, TimeProvider? patience = null)
    {
        var sender = new MailSender(Settings, patience ?? TimeProvider.System);
        _senders.Add(sender);
        var board = databases is null ? Board : new JobBoard(databases, Clock);
        return new MailWorker(board, bell ?? new JobBell(), Outbox, Writer(), sender, Settings, new InsightFigures(_metered.GetRequiredService<IMeterFactory>(), _standings, Clock), _standings, Clock, _db.Services.GetRequiredService<IServiceScopeFactory>(), NullLogger<MailWorker>.Instance);
    }

    /// <summary>Puts mails out the way the Books do, all in one save.</summary>
    public async Task PutAsync(int count, bool save = true)
    {
        var put = typeof(Outbox).GetMethod("Put", BindingFlags.Instance | BindingFlags.NonPublic)!;
        await using var db = _db.CreateDbContext();
        for (var number = 1; number <= count; number++)
        {
            put.Invoke(Outbox, [db, new Mail(MailKind.JoinAsStudent, $"student{number}@harbour.example") { Secret = "s" + number, At = Clock.GetUtcNow().AddDays(14) }, null]);
        }

        if (save)
        {
            await db.SaveChangesAsync(TestContext.Current.CancellationToken);
        }
    }

    public async Task<List<Job>> JobsAsync()
    {
        await using var db = _db.CreateDbContext();
        return await db.Set<Job>().AsNoTracking().ToListAsync(TestContext.Current.CancellationToken);
    }

    public async ValueTask DisposeAsync()
    {
        foreach (var sender in _senders)
        {
            await sender.DisposeAsync();
        }

        await _metered.DisposeAsync();
    }
}

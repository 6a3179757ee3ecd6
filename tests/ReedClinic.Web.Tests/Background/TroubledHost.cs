using Microsoft.AspNetCore.Hosting;
using Microsoft.AspNetCore.TestHost;
using Microsoft.EntityFrameworkCore;
using Microsoft.Extensions.DependencyInjection;
using Microsoft.Extensions.DependencyInjection.Extensions;
using Microsoft.Extensions.Hosting;
using Microsoft.Extensions.Time.Testing;
using ReedClinic.Data;
using ReedClinic.Data.Audit;
using ReedClinic.Data.Jobs;
using ReedClinic.Domain.Upkeep;
using ReedClinic.Web.Background;
using ReedClinic.Web.Tests.Hosting;

namespace ReedClinic.Web.Tests.Background;

/// <summary>A studio whose records give its workers trouble, and nobody else.</summary>
internal sealed class TroubledHost : ClinicHost
{
    private static readonly JobKind[] Looking = [JobKind.Retention, JobKind.Media, JobKind.Sweep, JobKind.Rates];

    /// <summary>Every worker.</summary>
    public static IReadOnlyList<Type> Kinds { get; } = [typeof(MailWorker), typeof(AuditWorker), typeof(RecordsWorker), typeof(WireWorker), typeof(SoundWorker)];

    public TroubledRecords Trouble { get; } = new();

    public FakeTimeProvider Clock { get; } = new(TimeProvider.System.GetUtcNow());

    /// <summary>True where the workers run by themselves.</summary>
    public bool Runs { get; init; }

    private static CancellationToken Ct => TestContext.Current.CancellationToken;

    /// <summary>Something to do for each of them.</summary>
    public async Task PutWorkAsync()
    {
        await Invite(NewEmail("hille")); // a mail, and a note for the audit
        await using var db = await OpenAsync();
        var now = Clock.GetUtcNow();
        db.AddRange(Looking.Select(kind => new Job { Id = Parcel.NewOperation().Value, Kind = kind, MadeAt = now, DueAt = now }));
        db.Add(new Job { Id = Parcel.NewOperation().Value, Kind = JobKind.Sound, Payload = $"{Guid.Empty:N}", MadeAt = now, DueAt = now });
        await db.SaveChangesAsync(Ct);
    }

    /// <summary>Lets a worker do what there is to do, and hears what it asks of the records.</summary>
    public async Task<TimeSpan?> TryAsync(StudioWorker worker)
    {
        Trouble.Within(); // until this method ends
        return await worker.TryAsync(Ct);
    }

    /// <summary>Whether a failure stands at a piece of work.</summary>
    public async Task<bool> HasNotedFailureAsync()
    {
        await using var db = await OpenAsync();
        return await db.Set<Job>().AnyAsync(job => job.DoneAt == null && job.Problem != null, Ct);
    }

    /// <summary>Whether a worker has left nothing.</summary>
    public async Task<bool> IsDoneAsync(QuietWork work)
    {
        await using var db = await OpenAsync();
        var open = db.Set<Job>().Where(job => job.DoneAt == null);
        return work switch
        {
            QuietWork.Mail => !await open.AnyAsync(job => job.Kind == JobKind.Mail, Ct),
            QuietWork.Sound => !await open.AnyAsync(job => job.Kind == JobKind.Sound, Ct),
            QuietWork.Records => !await open.AnyAsync(job => Looking.Contains(job.Kind), Ct),
            QuietWork.Audit => !await db.Set<AuditNote>().AnyAsync(Ct),
            _ => true,
        };
    }

    /// <summary>Waits until something is so.</summary>
    public static async Task UntilAsync(Func<bool> isSo)
    {
        using var patience = CancellationTokenSource.CreateLinkedTokenSource(Ct);
        patience.CancelAfter(TimeSpan.FromMinutes(2));
        using var ticks = new PeriodicTimer(TimeSpan.FromMilliseconds(20));
        while (!isSo())
        {
            await ticks.WaitForNextTickAsync(patience.Token);
        }
    }

    protected override void ConfigureWebHost(IWebHostBuilder builder)
    {
        base.ConfigureWebHost(builder);
        builder.ConfigureTestServices(services =>
        {
            services.Replace(ServiceDescriptor.Singleton<TimeProvider>(Clock));
            services.ConfigureDbContext<SqliteClinicDb>(options => options.AddInterceptors(Trouble));
            var records = services.Last(service => service.ServiceType == typeof(IDbContextFactory<ClinicDb>));
            services.Replace(ServiceDescriptor.Singleton<IDbContextFactory<ClinicDb>>(provider =>
                Trouble.Before((IDbContextFactory<ClinicDb>)ActivatorUtilities.CreateInstance(provider, records.ImplementationType!))));
            foreach (var worker in services.Where(service => service.ServiceType == typeof(IHostedService) && service.ImplementationType?.IsSubclassOf(typeof(StudioWorker)) == true).ToList())
            {
                services.Remove(worker);
                if (Runs)
                {
                    services.AddSingleton<IHostedService>(provider => new Troubled((StudioWorker)ActivatorUtilities.CreateInstance(provider, worker.ImplementationType!), Trouble));
                }
            }
        });
    }

    private Task<ClinicDb> OpenAsync() => Services.GetRequiredService<IDbContextFactory<ClinicDb>>().CreateDbContextAsync(Ct);

    // Whatever a worker does is heard of; what is done for a visitor isn't.
    private sealed class Troubled(StudioWorker worker, TroubledRecords trouble) : IHostedService
    {
        public async Task StartAsync(CancellationToken cancellationToken)
        {
            trouble.Within();
            await worker.StartAsync(cancellationToken);
        }

        public Task StopAsync(CancellationToken cancellationToken) => worker.StopAsync(cancellationToken);
    }
}

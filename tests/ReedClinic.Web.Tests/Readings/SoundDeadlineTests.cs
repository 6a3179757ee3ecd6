using Microsoft.AspNetCore.Hosting;
using Microsoft.AspNetCore.TestHost;
using Microsoft.EntityFrameworkCore;
using Microsoft.Extensions.DependencyInjection;
using Microsoft.Extensions.Logging.Abstractions;
using ReedClinic.Data;
using ReedClinic.Data.Jobs;
using ReedClinic.Data.Recordings;
using ReedClinic.Domain.Recordings;
using ReedClinic.Domain.Recordings.Readings;
using ReedClinic.Web.Background;
using ReedClinic.Web.Shared.Insight;
using ReedClinic.Web.Tests.Hosting;

namespace ReedClinic.Web.Tests.Readings;

/// <summary>A sound that takes too long: its try ends, and the worker goes on.</summary>
public sealed class SoundDeadlineTests(SoundDeadlineTests.Idle host) : IClassFixture<SoundDeadlineTests.Idle>
{
    private static CancellationToken Ct => TestContext.Current.CancellationToken;

    [Fact]
    public async Task A_try_that_takes_longer_than_its_deadline_ends_and_the_sound_is_tried_again_later()
    {
        await host.Student("Ines");
        var reed = (await host.Announce("Ines", "green thread")).Batch.Reeds[0].Id;
        var kept = await RecordingParcel.KeepAsync(host, reed, RecordingKind.ArrivalSound, default, isFromStudio: false, MadeCrow.Wave());
        Assert.Equal(1, await host.Services.GetRequiredService<SoundRegister>().AskForLeftAsync(Ct));

        Assert.Equal(1, await Worker(TimeSpan.Zero).ReadDueAsync(Ct));

        await using var scope = host.Services.CreateAsyncScope();
        var db = scope.ServiceProvider.GetRequiredService<ClinicDb>();
        var job = await db.Set<Job>().SingleAsync(row => row.Kind == JobKind.Sound, Ct);
        Assert.Equal((1, null, null), (job.Attempts, job.DoneAt, job.GaveUpAt));
        Assert.Equal(ReadingState.BeingRead, (await db.Set<SoundReading>().SingleAsync(row => row.Recording == kept.Id, Ct)).State);

        // With time enough the same sound is read.
        await db.Set<Job>().ExecuteUpdateAsync(rows => rows.SetProperty(row => row.DueAt, job.MadeAt), Ct);
        Assert.Equal(1, await Worker(TimeSpan.FromMinutes(5)).ReadDueAsync(Ct));
        Assert.Equal(ReadingState.Read, (await db.Set<SoundReading>().AsNoTracking().SingleAsync(row => row.Recording == kept.Id, Ct)).State);
    }

    private SoundWorker Worker(TimeSpan deadline) => new(
        host.Services.GetRequiredService<JobBoard>(), host.Services.GetRequiredService<JobBell>(), host.Services.GetRequiredService<SoundRegister>(),
        host.Services.GetRequiredService<MeasuredTests>(), host.Services.GetRequiredService<InsightFigures>(), host.Services.GetRequiredService<WorkerStandings>(), TimeProvider.System, NullLogger<SoundWorker>.Instance)
    { Deadline = deadline };

    /// <summary>A host whose own worker reads nothing.</summary>
    public sealed class Idle : ClinicHost
    {
        /// <inheritdoc />
        protected override void ConfigureWebHost(IWebHostBuilder builder)
        {
            base.ConfigureWebHost(builder);
            builder.ConfigureTestServices(services => services.Remove(services.Single(one => one.ImplementationType == typeof(SoundWorker))));
        }
    }
}

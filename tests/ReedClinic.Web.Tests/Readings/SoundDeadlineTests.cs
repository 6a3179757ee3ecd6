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
    private ChildDecoder Child => host.Services.GetRequiredService<ChildDecoder>();

    private static CancellationToken Ct => TestContext.Current.CancellationToken;

    [Fact]
    public async Task A_try_that_takes_longer_than_its_deadline_ends_and_the_sound_is_tried_again_later()
    {
        await host.Student("Ines");
        var reed = (await host.Announce("Ines", "green thread")).Batch.Reeds[0].Id;
        var kept = await RecordingParcel.KeepAsync(host, reed, RecordingKind.ArrivalSound, default, isFromStudio: false, MadeCrow.Wave());
        Assert.Equal(1, await host.Services.GetRequiredService<SoundRegister>().AskForLeftAsync(Ct));

        Assert.Equal(1, await host.Worker(TimeSpan.Zero, Child, TimeProvider.System).ReadDueAsync(Ct));

        await using var scope = host.Services.CreateAsyncScope();
        var db = scope.ServiceProvider.GetRequiredService<ClinicDb>();
        var job = await db.Set<Job>().SingleAsync(row => row.Kind == JobKind.Sound, Ct);
        Assert.Equal((1, null, null), (job.Attempts, job.DoneAt, job.GaveUpAt));
        Assert.Equal(ReadingState.BeingRead, (await db.Set<SoundReading>().SingleAsync(row => row.Recording == kept.Id, Ct)).State);

        // With time enough the same sound is read.
        await db.Set<Job>().ExecuteUpdateAsync(rows => rows.SetProperty(row => row.DueAt, job.MadeAt), Ct);
        Assert.Equal(1, await host.Worker(TimeSpan.FromMinutes(5), Child, TimeProvider.System).ReadDueAsync(Ct));
        Assert.Equal(ReadingState.Read, (await db.Set<SoundReading>().AsNoTracking().SingleAsync(row => row.Recording == kept.Id, Ct)).State);
    }

    /// <summary>A host whose own worker reads nothing.</summary>
    public sealed class Idle : ClinicHost
    {
        /// <summary>A worker that reads when it is told to.</summary>
        /// <param name="deadline">How long a try may take.</param>
        /// <param name="child">What decodes the forms that aren’t decoded here.</param>
        /// <param name="time">Its clock.</param>
        public SoundWorker Worker(TimeSpan deadline, ChildDecoder child, TimeProvider time) => new(
            Services.GetRequiredService<JobBoard>(), Services.GetRequiredService<JobBell>(), Services.GetRequiredService<SoundRegister>(),
            child, Services.GetRequiredService<MeasuredTests>(), Services.GetRequiredService<InsightFigures>(), Services.GetRequiredService<WorkerStandings>(), time, NullLogger<SoundWorker>.Instance)
        { Deadline = deadline };

        /// <summary>Gives up a sound that is to be tried again, so that no other test tries it.</summary>
        /// <param name="id">Which.</param>
        public async Task LeaveAsync(RecordingId id)
        {
            await Services.GetRequiredService<SoundRegister>().GiveUpAsync(id, SoundTrouble.GaveUp, TestContext.Current.CancellationToken);
            await using var scope = Services.CreateAsyncScope();
            await scope.ServiceProvider.GetRequiredService<ClinicDb>().Set<Job>().ExecuteDeleteAsync(TestContext.Current.CancellationToken);
        }

        /// <inheritdoc />
        protected override void ConfigureWebHost(IWebHostBuilder builder)
        {
            base.ConfigureWebHost(builder);
            builder.ConfigureTestServices(services => services.Remove(services.Single(one => one.ImplementationType == typeof(SoundWorker))));
        }
    }
}

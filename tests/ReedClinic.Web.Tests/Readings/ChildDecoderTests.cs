using System.Globalization;
using System.Text;
using Microsoft.EntityFrameworkCore;
using Microsoft.Extensions.Configuration;
using Microsoft.Extensions.DependencyInjection;
using Microsoft.Extensions.Logging;
using Microsoft.Extensions.Time.Testing;
using ReedClinic.Data;
using ReedClinic.Data.Jobs;
using ReedClinic.Data.Recordings;
using ReedClinic.Domain.Pitch;
using ReedClinic.Domain.Recordings;
using ReedClinic.Domain.Recordings.Readings;
using ReedClinic.Measurement.Sound.Decoding;
using ReedClinic.Web.Background;
using ReedClinic.Web.Tests.Hosting;

namespace ReedClinic.Web.Tests.Readings;

/// <summary>A child that decodes: what it may do, and what becomes of a sound when it does something else. Small scripts play the decoder.</summary>
[System.Runtime.Versioning.UnsupportedOSPlatform("windows")]
public sealed class ChildDecoderTests(SoundDeadlineTests.Idle host) : IClassFixture<SoundDeadlineTests.Idle>, IDisposable
{
    private static int _scripts;

    private readonly string _folder = Directory.CreateTempSubdirectory("reedclinic-child-").FullName;
    private readonly Said _log = new();

    private static CancellationToken Ct => TestContext.Current.CancellationToken;

    /// <inheritdoc />
    public void Dispose() => Directory.Delete(_folder, recursive: true);

    [Theory]
    [InlineData(true)]
    [InlineData(false)]
    public async Task What_a_child_gives_is_read_and_it_sees_the_sound(bool walls)
    {
        // It gives a crow, if what it is to decode begins as FLAC does.
        var child = Child(walls, "for word; do case $word in file:*) sound=${word#file:};; esac; done\n[ \"$(head -c 4 \"$sound\")\" = fLaC ] || exit 3", Floats(MadeCrow.Wave()));
        var kept = await KeptAsync(SoundFiles.Flac());

        Assert.Equal(1, await host.Worker(TimeSpan.FromMinutes(5), child, TimeProvider.System).ReadDueAsync(Ct));

        var reading = await ReadingAsync(kept);
        Assert.Equal(ReadingState.Read, reading.State);
        Assert.InRange(reading.Figures!.From(CrowTarget.OnC(new Tuning(new Hertz(440)))).Value!.Value, -14.5, -13.5);
        Assert.Equal(2, reading.Figures.Seconds, 0.001);
    }

    [Theory]
    [InlineData(true)]
    [InlineData(false)]
    public async Task A_child_that_hangs_ends_with_the_deadline_and_leaves_nothing_running(bool walls)
    {
        var seconds = string.Create(CultureInfo.InvariantCulture, $"86{Environment.ProcessId}{Interlocked.Increment(ref _scripts)}");
        var child = Child(walls, $"sleep {seconds}\nexit 0");
        var kept = await KeptAsync(SoundFiles.Flac());
        var time = new FakeTimeProvider();

        var reading = host.Worker(TimeSpan.FromSeconds(30), child, time).ReadDueAsync(Ct);
        Assert.True(await BecomesAsync(() => reading.IsCompleted || IsRunning(seconds)) && !reading.IsCompleted, "It ended by itself.");
        time.Advance(TimeSpan.FromSeconds(30));
        Assert.Equal(1, await reading);
        var (state, isOver) = ((await ReadingAsync(kept)).State, await BecomesAsync(() => !IsRunning(seconds) && !IsRunning(_folder)));
        await host.LeaveAsync(kept);

        Assert.Equal(ReadingState.BeingRead, state);
        Assert.True(isOver, "Something is left running.");
    }

    [Theory]
    [InlineData(true)]
    [InlineData(false)]
    public async Task Of_a_child_that_gives_too_much_no_more_is_taken_than_a_minute_and_a_second(bool walls)
    {
        // It goes on after that, so an answer comes only where it is cut off there.
        var child = Child(walls, $"yes | head -c {61 * 48_000 * 4}\nyes | head -c 4\nsleep 86400\nexit 0");
        using var patience = new CancellationTokenSource(TimeSpan.FromMinutes(2));

        var refused = Assert.IsType<DecodeResult.Refused>(await DecodeAsync(child, patience.Token));

        Assert.Equal((DecodeRefusal.TooLong, SoundForm.Flac), (refused.Reason, refused.Form));
        Assert.True(await BecomesAsync(() => !IsRunning(_folder)), "Something is left running.");
    }

    [Fact]
    public async Task A_child_that_fails_makes_a_sound_unreadable_and_no_more_than_the_beginning_of_its_words_stands_in_the_log()
    {
        var child = Child(walls: false, "yes drivel | head -c 5000 >&2\nexit 1");
        var kept = await KeptAsync(SoundFiles.Flac());

        Assert.Equal(1, await host.Worker(TimeSpan.FromMinutes(5), child, TimeProvider.System).ReadDueAsync(Ct));

        Assert.Equal((ReadingState.CannotBeRead, SoundTrouble.Damaged), ((await ReadingAsync(kept)).State, (await ReadingAsync(kept)).Trouble));
        var line = Assert.Single(_log.Lines, one => one.Contains("drivel", StringComparison.Ordinal));
        Assert.InRange(line.Length, 300, 360);
        Assert.DoesNotContain(line, char.IsControl);
    }

    [Theory]
    [InlineData("exit 0", DecodeRefusal.NoSound)]
    [InlineData("printf abc", DecodeRefusal.Damaged)]
    [InlineData("printf '\\377\\377\\377\\377\\377\\377\\377\\377'", DecodeRefusal.NotNumbers)]
    [InlineData("yes | head -c 400; kill -9 $$", DecodeRefusal.Damaged)]
    [InlineData("echo > \"$0.more\" || exit 5; exit 0", DecodeRefusal.Damaged)] // Nothing is written.
    public async Task Nonsense_from_a_child_is_a_reason(string script, DecodeRefusal reason)
    {
        Assert.Equal(new DecodeResult.Refused(reason, SoundForm.Flac), await DecodeAsync(Child(walls: false, script)));
    }

    [Fact]
    public async Task A_decoder_that_can_t_be_started_is_no_fault_of_the_sound()
    {
        await Assert.ThrowsAsync<DecoderAwayException>(() => DecodeAsync(new ChildDecoder(Found with { Decoder = "/nowhere/ffmpeg" }, _log)));
        await Assert.ThrowsAsync<DecoderAwayException>(() => DecodeAsync(Child(walls: false, "exit 127")));
    }

    [Theory]
    [InlineData(true)]
    [InlineData(false)]
    public async Task However_long_the_decoder_is_away_a_sound_waits_and_is_read_once_it_is_back(bool walls)
    {
        var kept = await KeptAsync(SoundFiles.Flac());
        var away = walls ? Child(walls: false, "exit 127") : new ChildDecoder(Found with { Decoder = "/nowhere/ffmpeg" }, _log);
        for (var look = 0; look < 2 * SoundWorker.MostTries; look++)
        {
            await host.Worker(TimeSpan.FromMinutes(5), away, TimeProvider.System).ReadDueAsync(Ct);
            var job = await DueAsync();
            Assert.Equal((0, null, null), (job.Attempts, job.DoneAt, job.GaveUpAt));
        }

        await host.Worker(TimeSpan.FromMinutes(5), Child(walls: false, "", Floats(MadeCrow.Wave())), TimeProvider.System).ReadDueAsync(Ct);

        Assert.Equal(ReadingState.Read, (await ReadingAsync(kept)).State);
    }

    [Fact]
    public async Task A_sound_whose_form_was_not_read_is_asked_for_again_once_a_decoder_for_it_was_named()
    {
        var kept = await KeptAsync(SoundFiles.Flac());
        await host.Worker(TimeSpan.FromMinutes(5), new ChildDecoder(Found, _log), TimeProvider.System).TryAsync(Ct);
        Assert.Equal(SoundTrouble.FormNotRead, (await ReadingAsync(kept)).Trouble);

        // What was asked for in this very hour is asked for again in the next one; here that hour is over.
        await using (var scope = host.Services.CreateAsyncScope())
        {
            await scope.ServiceProvider.GetRequiredService<ClinicDb>().Set<Job>().Where(job => job.Kind == JobKind.Sound).ExecuteDeleteAsync(Ct);
        }

        await host.Worker(TimeSpan.FromMinutes(5), Child(walls: false, "", Floats(MadeCrow.Wave())), TimeProvider.System).TryAsync(Ct);

        Assert.Equal((ReadingState.Read, null), ((await ReadingAsync(kept)).State, (await ReadingAsync(kept)).Trouble));
    }

    [Fact]
    public async Task It_inherits_nothing_of_the_programs_environment()
    {
        Environment.SetEnvironmentVariable("REEDCLINIC_CHILD_TEST", "a secret");

        await DecodeAsync(Child(walls: false, "echo \"[$REEDCLINIC_CHILD_TEST]\" >&2; exit 1"));

        Assert.Contains(_log.Lines, line => line.Contains("[]", StringComparison.Ordinal));
    }

    [Theory]
    [InlineData(true)]
    [InlineData(false)]
    public void Its_arguments_name_the_sounds_own_file_and_what_it_is_by_its_content_and_nothing_else(bool walls)
    {
        var programs = new ChildPrograms("/usr/bin/ffmpeg", "/usr/bin/prlimit", "/usr/bin/bwrap");
        var sound = host.Services.GetRequiredService<MediaFolder>().PathOf(new string('a', 32));

        var line = programs.Decoding(sound, SoundForm.Mp4, 61, walls);

        Assert.Equal(walls ? 1 : 0, line.Count(word => word == sound));
        Assert.Equal(walls ? "file:/sound" : "file:" + sound, line[line.ToList().IndexOf("-i") + 1]);
        Assert.Equal("mov", line[line.ToList().IndexOf("-f") + 1]);
        Assert.Equal(walls, line.Contains("--unshare-all"));
        Assert.Superset(new HashSet<string>(["--fsize=0", "--cpu=20", "-nostdin", "file,pipe", "-vn", "-sn", "-dn"]), line.ToHashSet());
    }

    [Theory]
    [InlineData(SoundForm.Mp4, true)]
    [InlineData(SoundForm.Flac, true)]
    [InlineData(SoundForm.Wave, false)]
    [InlineData(SoundForm.Other, false)]
    [InlineData(null, false)]
    public void A_child_is_asked_for_the_two_forms_alone_and_never_without_limits(SoundForm? form, bool isAsked)
    {
        var programs = new ChildPrograms("/usr/bin/ffmpeg", "/usr/bin/prlimit", null);

        Assert.Equal(isAsked, new ChildDecoder(programs, _log).Reads(form));
        Assert.False(new ChildDecoder(programs with { Decoder = null }, _log).Reads(form));
        Assert.False(new ChildDecoder(programs with { Limiter = null }, _log).Reads(form));
    }

    private static ChildPrograms Found => ChildPrograms.Of(new ConfigurationBuilder().Build());

    // What it says to being asked for its version is the script’s beginning; what it gives stands behind its end.
    private ChildDecoder Child(bool walls, string script, byte[]? gives = null)
    {
        var path = Path.Combine(_folder, string.Create(CultureInfo.InvariantCulture, $"decoder-{Interlocked.Increment(ref _scripts)}"));
        var end = gives is null ? "" : string.Create(CultureInfo.InvariantCulture, $"\ntail -c {gives.Length} \"$0\"\nexit 0\n");
        File.WriteAllBytes(path, [.. Encoding.ASCII.GetBytes($"#!/bin/sh\n[ \"$1\" = -version ] && exit 0\n{script}{end}"), .. gives ?? []]);
        File.SetUnixFileMode(path, UnixFileMode.UserRead | UnixFileMode.UserWrite | UnixFileMode.UserExecute);
        return new ChildDecoder(Found with { Decoder = path, Walls = walls ? Found.Walls : null }, _log);
    }

    private async Task<DecodeResult> DecodeAsync(ChildDecoder child, CancellationToken? ct = null)
    {
        var sound = Path.Combine(_folder, "sound");
        await File.WriteAllBytesAsync(sound, SoundFiles.Flac(), Ct);
        return await child.DecodeAsync(sound, SoundForm.Flac, DecodeLimits.Usual, ct ?? Ct);
    }

    private async Task<RecordingId> KeptAsync(byte[] sound)
    {
        var name = string.Create(CultureInfo.InvariantCulture, $"Ines{Interlocked.Increment(ref _scripts)}");
        await host.Student(name);
        var reed = (await host.Announce(name, "green thread")).Batch.Reeds[0].Id;
        var kept = await RecordingParcel.KeepAsync(host, reed, RecordingKind.ArrivalSound, default, isFromStudio: false, sound);
        await host.Services.GetRequiredService<SoundRegister>().AskForLeftAsync(Ct);
        return kept.Id;
    }

    // The one that waits, due at once.
    private async Task<Job> DueAsync()
    {
        await using var scope = host.Services.CreateAsyncScope();
        var jobs = scope.ServiceProvider.GetRequiredService<ClinicDb>().Set<Job>().Where(job => job.Kind == JobKind.Sound && job.DoneAt == null && job.GaveUpAt == null);
        await jobs.ExecuteUpdateAsync(rows => rows.SetProperty(row => row.DueAt, row => row.MadeAt), Ct);
        return await jobs.SingleAsync(Ct);
    }

    private async Task<SoundReading> ReadingAsync(RecordingId id)
    {
        await using var scope = host.Services.CreateAsyncScope();
        return await scope.ServiceProvider.GetRequiredService<ClinicDb>().Set<SoundReading>().AsNoTracking().SingleAsync(row => row.Recording == id, Ct);
    }

    private static byte[] Floats(byte[] wave)
    {
        const int head = 44;
        var floats = new byte[2 * (wave.Length - head)];
        for (var at = head; at < wave.Length; at += 2)
        {
            BitConverter.TryWriteBytes(floats.AsSpan(2 * (at - head)), BitConverter.ToInt16(wave, at) / 32_768f);
        }

        return floats;
    }

    private static async Task<bool> BecomesAsync(Func<bool> what)
    {
        using var patience = new CancellationTokenSource(TimeSpan.FromMinutes(1));
        while (!what() && !patience.IsCancellationRequested)
        {
            await Task.Yield();
        }

        return what();
    }

    private static bool IsRunning(string word) => Directory.EnumerateDirectories("/proc").Where(folder => char.IsAsciiDigit(folder[^1])).Any(folder =>
    {
        try
        {
            return File.ReadAllText(Path.Combine(folder, "cmdline")).Contains(word, StringComparison.Ordinal);
        }
        catch (Exception gone) when (gone is IOException or UnauthorizedAccessException)
        {
            return false;
        }
    });

    private sealed class Said : ILogger<ChildDecoder>
    {
        public List<string> Lines { get; } = [];

        public IDisposable? BeginScope<TState>(TState state)
            where TState : notnull => null;

        public bool IsEnabled(LogLevel logLevel) => true;

        public void Log<TState>(LogLevel logLevel, EventId eventId, TState state, Exception? exception, Func<TState, Exception?, string> formatter) => Lines.Add(formatter(state, exception));
    }
}

using System.Net;
using System.Security.Cryptography;
using System.Text.Json;
using System.Text.RegularExpressions;
using Microsoft.Extensions.DependencyInjection;
using ReedClinic.Data;
using ReedClinic.Data.Jobs;
using ReedClinic.Data.Recordings;
using ReedClinic.Domain.Intake;
using ReedClinic.Domain.Recordings;
using ReedClinic.Domain.Recordings.Readings;
using ReedClinic.Web.Tests.Hosting;

namespace ReedClinic.Web.Tests.Readings;

/// <summary>What a kept sound says, over HTTP and with the worker that reads it. No recording of a crow was available: crows are made.</summary>
public sealed class ReadingPagesTests(ClinicHost host) : IClassFixture<ClinicHost>
{
    private static CancellationToken Ct => TestContext.Current.CancellationToken;

    [Fact]
    public async Task A_crow_that_is_sent_is_read_and_its_page_says_whether_it_is_in_tune_which_octaves_sound_and_how_soon()
    {
        var (student, batch) = await SceneAsync("Ines");
        var id = await SendAsync(student, batch, "ArrivalSound", MadeCrow.Wave());
        Assert.Equal(ReadingState.Read, await EndAsync(student, id));

        var page = await PageAsync(student, id);

        Assert.Contains("In tune for A at 440 Hz: 14 cents below C.", page, StringComparison.Ordinal);
        Assert.Matches("All three octaves sound: the high one first, 0\\.0[789] s after the breath, then the others within 0\\.(19|2[01]) s\\.", page);
        Assert.Contains("A cent is a hundredth of a semitone", page, StringComparison.Ordinal);
        Assert.DoesNotContain("-0", Regex.Replace(page, "<[^>]*>", ""), StringComparison.Ordinal);
        Assert.DoesNotContain("points", page, StringComparison.Ordinal);
        Assert.Contains("tried on made-up sounds only", page, StringComparison.Ordinal);

        // She never said what she tunes to, so there is no band.
        Assert.Contains("so C is that of an A at 440 Hz", page, StringComparison.Ordinal);
        Assert.DoesNotContain("ink-band", page, StringComparison.Ordinal);
        Assert.Contains("<audio controls preload=\"none\" src=\"/recordings/" + id, page, StringComparison.Ordinal);
        Assert.Contains("class=\"ink-firstoctave\"", page, StringComparison.Ordinal);
        Assert.Matches("It (sounds like|is probably) a crow\\.", page);
        var picture = await student.GetAsync(new Uri($"/recordings/{id}/reading/picture", UriKind.Relative), Ct);
        Assert.Equal("image/png", picture.Content.Headers.ContentType!.ToString());
        Assert.InRange((await picture.Content.ReadAsByteArrayAsync(Ct)).Length, 1_000, SoundReading.LargestPicture);
        Assert.Contains($"href=\"/recordings/{id}/reading\"", (await student.See($"/batches/{batch.Code}")).Page, StringComparison.Ordinal);
    }

    [Fact]
    public async Task While_it_waits_the_page_says_so_and_whoever_asks_is_told_as_soon_as_it_was_read()
    {
        var (student, batch) = await SceneAsync("Tomas");
        var kept = await RecordingParcel.KeepAsync(host, batch.Reeds[0].Id, RecordingKind.ArrivalSound, default, isFromStudio: false);
        var page = await PageAsync(student, kept.Id.Value);
        Assert.Contains("waits to be read", page, StringComparison.Ordinal);
        Assert.Contains("data-reading=\"Waiting\"", page, StringComparison.Ordinal);
        Assert.Contains($"data-state-at=\"/recordings/{kept.Id.Value}/reading/state\"", page, StringComparison.Ordinal);

        var asked = AskAsync(student, kept.Id.Value, "Waiting");
        await host.Services.GetRequiredService<SoundRegister>().KeepAsync(kept.Id, MadeReadings.Crow(), Ct);

        Assert.Equal(ReadingState.Read, await asked);
        Assert.DoesNotContain("waits to be read", await PageAsync(student, kept.Id.Value), StringComparison.Ordinal);
    }

    [Fact]
    public async Task What_a_dead_process_left_half_done_is_read_by_the_next_and_once()
    {
        var (student, batch) = await SceneAsync("Wilma");
        var kept = await RecordingParcel.KeepAsync(host, batch.Reeds[0].Id, RecordingKind.ArrivalSound, default, isFromStudio: false, MadeCrow.Wave());
        var now = TimeProvider.System.GetUtcNow();
        var job = new Job
        {
            Id = Guid.CreateVersion7(now),
            Kind = JobKind.Sound,
            Payload = kept.Id.Value.ToString("N"),
            MadeAt = now.AddMinutes(-9),
            DueAt = now.AddMinutes(-9),
            Attempts = 1,
            Lease = Parcel.NewOperation().Value,
            LeasedUntil = now.AddMinutes(-7),
        };
        await using (var scope = host.Services.CreateAsyncScope())
        {
            var db = scope.ServiceProvider.GetRequiredService<ClinicDb>();
            (await db.FindAsync<SoundReading>([kept.Id], Ct))!.Begin();
            db.Add(job);
            await db.SaveChangesAsync(Ct);
        }

        Assert.Equal(ReadingState.Read, await EndAsync(student, kept.Id.Value));
        Assert.Contains("14 cents below C", await PageAsync(student, kept.Id.Value), StringComparison.Ordinal);
        await using var after = host.Services.CreateAsyncScope();
        var left = (await after.ServiceProvider.GetRequiredService<ClinicDb>().FindAsync<Job>([job.Id], Ct))!;
        Assert.Equal(2, left.Attempts);
    }

    [Theory]
    [InlineData("flac", "can be played and not measured")]
    [InlineData("zip", "isn’t a sound that can be kept")]
    [InlineData("cut", "This file isn’t whole")]
    [InlineData("endless", "longer than a minute")]
    [InlineData("gone", "file isn’t there any more")]
    public async Task What_can_t_be_read_says_why_in_plain_words_and_stays_to_be_heard(string what, string words)
    {
        var (student, batch) = await SceneAsync("Jory");
        byte[] sent = what == "flac" ? SoundFiles.Flac() : what == "endless" ? SoundFiles.Wave(61, 8_000) : SoundFiles.Wave();

        // What was kept is clean; a disk that lies is the way to something worse.
        var id = await SendAsync(student, batch, "ArrivalSound", sent, kept: file =>
        {
            if (what == "gone")
            {
                File.Delete(file);
            }
            else if (what is "zip" or "cut")
            {
                File.WriteAllBytes(file, what == "zip" ? MediaCorpus.Zip() : sent[..30]);
            }
        });
        Assert.Equal(ReadingState.CannotBeRead, await EndAsync(student, id));

        var page = await PageAsync(student, id);
        Assert.Contains("Nothing can be read from this recording.", page, StringComparison.Ordinal);
        Assert.Contains(words, page, StringComparison.Ordinal);
        Assert.Contains("<audio", page, StringComparison.Ordinal);
        Assert.Equal(HttpStatusCode.NotFound, (await student.See($"/recordings/{id}/reading/picture")).Status);
    }

    [Fact]
    public async Task Somebody_elses_sound_has_no_page_for_them()
    {
        var (_, batch) = await SceneAsync("Pia");
        var kept = await RecordingParcel.KeepAsync(host, batch.Reeds[0].Id, RecordingKind.ArrivalSound, default, isFromStudio: false, findings: MadeReadings.Crow());
        var other = await host.Student("Mette");

        foreach (var path in new[] { "", "/state", "/picture" })
        {
            Assert.Equal(HttpStatusCode.NotFound, (await other.See($"/recordings/{kept.Id.Value}/reading{path}")).Status);
        }
    }

    [Fact]
    public async Task What_is_played_is_put_right_by_a_form_and_a_clash_shows_what_stands()
    {
        var (student, batch) = await SceneAsync("Nele");
        var kept = await RecordingParcel.KeepAsync(host, batch.Reeds[0].Id, RecordingKind.ArrivalSound, default, isFromStudio: false, findings: MadeReadings.Crow());
        var path = $"/recordings/{kept.Id.Value}/reading";
        var late = await Form.At(student, path, path);

        using var none = await (await Form.At(student, path, path)).Set("Kind", "Whistle").Post();
        Assert.Contains("Please choose one of the four.", WebUtility.HtmlDecode(await none.Content.ReadAsStringAsync(Ct)), StringComparison.Ordinal);
        using var said = await (await Form.At(student, path, path)).Set("Kind", "Peep").Post();
        Assert.Equal(path, said.Leads());
        using var clash = await late.Set("Kind", "Attack").Post();

        var page = WebUtility.HtmlDecode(await clash.Content.ReadAsStringAsync(Ct));
        Assert.Contains("Somebody else said something at the same moment.", page, StringComparison.Ordinal);
        Assert.Contains("You or the studio said: a peep.", page, StringComparison.Ordinal);
        Assert.Contains("The peep stood at a B4", await PageAsync(student, kept.Id.Value), StringComparison.Ordinal);
    }

    [Theory]
    [InlineData(0.31, 3)]
    [InlineData(0.9, 0.1)]
    public async Task Where_it_is_unsure_what_is_played_it_is_asked_first_and_nothing_is_judged_until_it_was_said(double share, double seconds)
    {
        var (student, batch) = await SceneAsync("Birte");
        var crow = MadeReadings.Crow(442);
        var unsure = crow with
        {
            Figures = crow.Figures with { Seconds = seconds, BreathOnset = Figure.None(Unread.NoTone) },
            Guess = new SoundGuess(SoundKind.Crow, share),
        };
        var kept = await RecordingParcel.KeepAsync(host, batch.Reeds[0].Id, RecordingKind.ArrivalSound, default, isFromStudio: false, findings: unsure);
        await RecordingParcel.KeepAsync(host, batch.Reeds[0].Id, RecordingKind.ArrivalSound, default, isFromStudio: false, findings: MadeReadings.Crow());
        var path = $"/recordings/{kept.Id.Value}/reading";

        var page = await PageAsync(student, kept.Id.Value);
        Assert.Contains("A note near A4, 8 cents high. Was this a crow?", page, StringComparison.Ordinal);
        Assert.DoesNotContain("data-stand", page, StringComparison.Ordinal);
        Assert.DoesNotContain("class=\"sound-first\"", page, StringComparison.Ordinal);
        Assert.DoesNotContain(" checked", page, StringComparison.Ordinal);
        Assert.True(page.IndexOf("It may be a crow, or something else.", StringComparison.Ordinal) < page.IndexOf("<audio", StringComparison.Ordinal));
        Assert.Contains("the sound begins at once", page, StringComparison.Ordinal);
        Assert.DoesNotContain("no tone is heard", page, StringComparison.Ordinal);
        Assert.Contains("before you post it, by you", page, StringComparison.Ordinal);

        // What was kept without a choice is asked for; what a player says counts.
        using var none = await (await Form.At(student, path, path)).Post();
        Assert.Contains("Please choose one of the four.", WebUtility.HtmlDecode(await none.Content.ReadAsStringAsync(Ct)), StringComparison.Ordinal);
        using var said = await (await Form.At(student, path, path)).Set("Kind", "LongTone").Post();
        Assert.Equal(path, said.Leads());
        var tone = await PageAsync(student, kept.Id.Value);
        Assert.Contains("The note stood at an A4", tone, StringComparison.Ordinal);
        Assert.Contains("You or the studio said: a long tone.", tone, StringComparison.Ordinal);
        Assert.DoesNotContain("class=\"sound-first\"", tone, StringComparison.Ordinal);
        Assert.Contains("so nothing is compared", tone, StringComparison.Ordinal);
        using var crowed = await (await Form.At(student, path, path)).Set("Kind", "Crow").Post();
        Assert.Contains("data-stand=\"Low\"", await PageAsync(student, kept.Id.Value), StringComparison.Ordinal);
    }

    [Fact]
    public async Task Two_sounds_of_one_minute_are_told_apart_by_their_number_and_their_words()
    {
        var (student, batch) = await SceneAsync("Hedda");
        var reed = batch.Reeds[0].Id;
        var first = await RecordingParcel.KeepAsync(host, reed, RecordingKind.ArrivalSound, default, isFromStudio: false, findings: MadeReadings.Crow(500));
        await RecordingParcel.KeepAsync(host, reed, RecordingKind.ArrivalSound, default, isFromStudio: false, findings: MadeReadings.Crow(507), words: "after soaking");
        var page = await PageAsync(student, first.Id.Value);
        Assert.Contains("This one: recording 1, before you post it, by you", page, StringComparison.Ordinal);
        Assert.Contains("The other: recording 2, before you post it, by you", page, StringComparison.Ordinal);
        Assert.Contains("“after soaking”", page, StringComparison.Ordinal);
    }

    [Fact]
    public async Task How_it_came_and_how_it_goes_home_lie_over_each_other_with_their_numbers()
    {
        var (_, batch) = await SceneAsync("Lena");
        var teacher = await host.Teacher();
        var reed = batch.Reeds[0].Id;
        var came = await RecordingParcel.KeepAsync(host, reed, RecordingKind.ArrivalSound, default, isFromStudio: false, findings: MadeReadings.Crow(500));
        await RecordingParcel.KeepAsync(host, reed, RecordingKind.ArrivalSound, default, isFromStudio: true, findings: MadeReadings.Crow(507));
        var home = await RecordingParcel.KeepAsync(host, reed, RecordingKind.FinalSound, default, isFromStudio: true, findings: MadeReadings.Crow(523));

        var page = await PageAsync(teacher, home.Id.Value);
        Assert.Contains("class=\"ink-othertrace\"", page, StringComparison.Ordinal);
        Assert.Contains("The other: recording 2, as it came, by the studio", page, StringComparison.Ordinal);
        Assert.Contains($"?with={came.Id.Value}#beside", page, StringComparison.Ordinal);
        var chosen = WebUtility.HtmlDecode((await teacher.See($"/recordings/{home.Id.Value}/reading?with={came.Id.Value}")).Page);
        Assert.Contains("The other: recording 1, at home, before the post, by the student", chosen, StringComparison.Ordinal);

        // The student’s take beside the teacher’s.
        Assert.Contains("The other: recording 3, as it goes home", await PageAsync(teacher, came.Id.Value), StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_test_recorded_at_the_bench_comes_into_the_log_as_measured_and_leads_to_what_it_says()
    {
        var (student, batch) = await SceneAsync("Sanne");
        var teacher = await host.Teacher();
        var id = await SendAsync(teacher, batch, "FinalSound", MadeCrow.Wave(), retest: true);
        Assert.Equal(ReadingState.Read, await EndAsync(teacher, id));

        // The reading is there a moment before the log: the bench is asked until the job is done.
        string bench;
        do
        {
            (_, bench, _) = await teacher.See($"/bench/{batch.Reeds[0].Id.Value}");
        }
        while (!bench.Contains("Measured from a recording", StringComparison.Ordinal));

        Assert.Contains($"/recordings/{id}/reading", bench, StringComparison.Ordinal);
        Assert.Contains("class=\"ink-measured\"", bench, StringComparison.Ordinal);
        Assert.Equal(HttpStatusCode.NotFound, (await student.See($"/recordings/{id}/reading")).Status);
    }

    private async Task<(HttpClient Student, Batch Batch)> SceneAsync(string name)
    {
        var student = await host.Student(name);
        return (student, (await host.Announce(name, "green thread")).Batch);
    }

    private async Task<Guid> SendAsync(HttpClient client, Batch batch, string kind, byte[] sound, bool retest = false, Action<string>? kept = null)
    {
        var path = $"/recordings/add/{batch.Reeds[0].Id.Value}/{kind}";
        var form = (await Form.At(client, path, path)).Set("Reed", batch.Reeds[0].Id.Value.ToString()).Set("Kind", kind).Set("Retest", retest ? "true" : "")
            .Set("Bytes", sound.Length.ToString(System.Globalization.CultureInfo.InvariantCulture));
        using var begun = await form.PostTo("/recordings");
        var id = JsonDocument.Parse(await begun.Content.ReadAsStringAsync(Ct)).RootElement.GetProperty("id").GetGuid();
        using var sent = await form.SendTo(HttpMethod.Put, $"/recordings/{id}/at/0", sound);
        Assert.Equal(HttpStatusCode.OK, sent.StatusCode);
        if (kept is null)
        {
            using var done = await form.Set("Sha256", Convert.ToHexStringLower(SHA256.HashData(sound))).PostTo($"/recordings/{id}/done");
            Assert.Equal(HttpStatusCode.OK, done.StatusCode);
            return id;
        }

        // Kept without the job, then spoilt, then asked for.
        var spoilt = await RecordingParcel.KeepAsync(host, batch.Reeds[0].Id, Enum.Parse<RecordingKind>(kind), default, isFromStudio: false, sound);
        kept(host.Services.GetRequiredService<MediaFolder>().PathOf(spoilt.File));
        Assert.InRange(await host.Services.GetRequiredService<SoundRegister>().AskForLeftAsync(Ct), 1, 50);
        return spoilt.Id.Value;
    }

    // Each question is answered when there is news, or after a while; nothing here sleeps.
    private static async Task<ReadingState> EndAsync(HttpClient client, Guid id)
    {
        var state = ReadingState.Waiting;
        while (state is ReadingState.Waiting or ReadingState.BeingRead)
        {
            state = await AskAsync(client, id, state.ToString());
        }

        return state;
    }

    private static async Task<ReadingState> AskAsync(HttpClient client, Guid id, string since)
    {
        var answer = await client.GetStringAsync(new Uri($"/recordings/{id}/reading/state?since={since}", UriKind.Relative), Ct);
        return Enum.Parse<ReadingState>(JsonDocument.Parse(answer).RootElement.GetProperty("state").GetString()!);
    }

    private static async Task<string> PageAsync(HttpClient client, Guid id)
    {
        var (status, page, _) = await client.See($"/recordings/{id}/reading");
        Assert.Equal(HttpStatusCode.OK, status);
        return WebUtility.HtmlDecode(page);
    }
}

using System.Net;
using System.Net.Http.Headers;
using System.Security.Cryptography;
using System.Text.Json;
using AngleSharp.Html.Parser;
using Microsoft.AspNetCore.Hosting;
using Microsoft.EntityFrameworkCore;
using Microsoft.Extensions.DependencyInjection;
using ReedClinic.Data;
using ReedClinic.Domain.Intake;
using ReedClinic.Domain.People;
using ReedClinic.Domain.Recordings;
using ReedClinic.Web.Shared.Hosting;
using ReedClinic.Web.Tests.Guardians;
using ReedClinic.Web.Tests.Hosting;

namespace ReedClinic.Web.Tests.Recordings;

/// <summary>Sounds and photographs over HTTP: OWASP ASVS 5.0, 3.2.1, 3.5.1, 5.2.1, 5.2.2, 5.3.2, 5.4.1, 5.4.2.</summary>
public sealed class RecordingPagesTests(ClinicHost host) : IClassFixture<ClinicHost>
{
    private const string Token = "__RequestVerificationToken";

    private static CancellationToken Ct => TestContext.Current.CancellationToken;

    [Fact]
    public async Task A_sound_whose_sending_breaks_off_twenty_times_arrives_as_it_was_sent()
    {
        var (student, batch) = await SceneAsync("Ines");
        var form = await FormAsync(student, batch);
        var sound = SoundFiles.Wave(60, 16_000);
        var random = new Random(5);
        var (id, at, breaks) = (await StartAsync(form, batch, sound.Length), 0, 0);
        while (at < sound.Length)
        {
            var piece = sound[at..Math.Min(sound.Length, at + (sound.Length / 24))];
            if (breaks < 20)
            {
                breaks++;
                await BreakOffAsync(student, form, $"/recordings/{id}/at/{at}", piece, random.Next(piece.Length));
            }

            // What broke off counts for nothing: the server tells where to go on.
            at = (await ReadAsync(await student.GetAsync(new Uri($"/recordings/{id}/received", UriKind.Relative), Ct))).GetProperty("received").GetInt32();
            using var sent = await form.SendTo(HttpMethod.Put, $"/recordings/{id}/at/{at}", sound[at..Math.Min(sound.Length, at + (sound.Length / 24))]);
            at = (await ReadAsync(sent)).GetProperty("received").GetInt32();
        }

        var kept = await ReadAsync(await FinishAsync(form, id, sound));
        var back = await student.GetByteArrayAsync(new Uri($"/recordings/{id}", UriKind.Relative), Ct);

        Assert.Equal(20, breaks);
        Assert.Equal(Convert.ToHexString(SHA256.HashData(sound)), Convert.ToHexString(SHA256.HashData(back)));
        Assert.Equal((60_000, "audio/wav"), (kept.GetProperty("milliseconds").GetInt32(), kept.GetProperty("type").GetString()));
    }

    [Fact]
    public async Task A_piece_that_is_too_long_is_turned_away_while_it_comes_and_one_from_elsewhere_is_told_where()
    {
        var (student, batch) = await SceneAsync("Tomas");
        var form = await FormAsync(student, batch);
        var id = await StartAsync(form, batch, 3 * RecordingLimits.Chunk);

        using var tooLong = await form.SendTo(HttpMethod.Put, $"/recordings/{id}/at/0", new byte[RecordingLimits.Chunk + 1]);
        using var elsewhere = await form.SendTo(HttpMethod.Put, $"/recordings/{id}/at/500", new byte[10]);
        using var tooLarge = await form.Set("Reed", batch.Reeds[0].Id.Value.ToString()).Set("Kind", "ArrivalSound").Set("Bytes", "99000000").Set("Operation", Guid.Empty.ToString()).PostTo("/recordings");

        Assert.Equal(HttpStatusCode.RequestEntityTooLarge, tooLong.StatusCode);
        Assert.Equal(0, (await ReadAsync(tooLong)).GetProperty("received").GetInt32());
        Assert.Equal(HttpStatusCode.Conflict, elsewhere.StatusCode);
        Assert.Equal(HttpStatusCode.UnprocessableEntity, tooLarge.StatusCode);
        Assert.Contains("too large", (await ReadAsync(tooLarge)).GetProperty("problem").GetString(), StringComparison.Ordinal);
    }

    [Fact]
    public async Task What_goes_out_has_the_type_that_its_content_has_and_can_do_nothing_as_a_page()
    {
        var (student, batch) = await SceneAsync("Wilma");
        var kept = await RecordingParcel.KeepAsync(host, batch.Reeds[0].Id, RecordingKind.ArrivalPhoto, default, isFromStudio: false);

        using var answer = await student.GetAsync(new Uri($"/recordings/{kept.Id.Value}", UriKind.Relative), Ct);

        Assert.Equal("image/jpeg", answer.Content.Headers.ContentType!.ToString());
        Assert.Equal(["nosniff"], answer.Headers.GetValues("X-Content-Type-Options"));
        Assert.StartsWith("sandbox; default-src 'none'", Assert.Single(answer.Headers.GetValues("Content-Security-Policy")), StringComparison.Ordinal);
        Assert.Equal(["same-origin"], answer.Headers.GetValues("Cross-Origin-Resource-Policy"));
        Assert.Contains("no-store", answer.Headers.CacheControl!.ToString(), StringComparison.Ordinal);
        Assert.Matches("^inline; filename=arrivalphoto-[0-9]{8}-[0-9]{6}\\.jpg$", answer.Content.Headers.ContentDisposition!.ToString());
        using var page = await student.GetAsync(new Uri("/privacy", UriKind.Relative), Ct);
        Assert.Equal([GuardHeaders.ContentPolicy], page.Headers.GetValues("Content-Security-Policy"));
    }

    [Fact]
    public async Task A_player_may_ask_for_a_part()
    {
        var (student, batch) = await SceneAsync("Jory");
        var kept = await RecordingParcel.KeepAsync(host, batch.Reeds[0].Id, RecordingKind.ArrivalSound, default, isFromStudio: false, SoundFiles.Wave());
        using var request = new HttpRequestMessage(HttpMethod.Get, new Uri($"/recordings/{kept.Id.Value}", UriKind.Relative)) { Headers = { Range = new RangeHeaderValue(4, 11) } };

        using var answer = await student.SendAsync(request, Ct);

        Assert.Equal(HttpStatusCode.PartialContent, answer.StatusCode);
        Assert.Equal(SoundFiles.Wave()[4..12], await answer.Content.ReadAsByteArrayAsync(Ct));
    }

    [Fact]
    public async Task Nobody_elses_page_can_send_or_remove_anything()
    {
        var (student, batch) = await SceneAsync("Sanne");
        var form = await FormAsync(student, batch);
        var id = await StartAsync(form, batch, 100);
        var kept = await RecordingParcel.KeepAsync(host, batch.Reeds[0].Id, RecordingKind.ArrivalSound, default, isFromStudio: false);
        form.Without(Token).Set(Token, "made-up");

        Assert.Equal(HttpStatusCode.BadRequest, (await form.SendTo(HttpMethod.Put, $"/recordings/{id}/at/0", new byte[100])).StatusCode);
        Assert.Equal(HttpStatusCode.BadRequest, (await form.PostTo("/recordings")).StatusCode);
        Assert.Equal(HttpStatusCode.BadRequest, (await form.PostTo($"/recordings/{id}/done")).StatusCode);
        Assert.Equal(HttpStatusCode.BadRequest, (await form.PostTo($"/recordings/{kept.Id.Value}/remove")).StatusCode);
        Assert.Equal(HttpStatusCode.BadRequest, (await form.SendTo(HttpMethod.Delete, $"/recordings/{kept.Id.Value}")).StatusCode);
        Assert.Equal(HttpStatusCode.NoContent, (await (await FormAsync(student, batch)).SendTo(HttpMethod.Delete, $"/recordings/{kept.Id.Value}")).StatusCode);
        Assert.Equal(HttpStatusCode.NotFound, (await student.See($"/recordings/{kept.Id.Value}")).Status);
    }

    [Fact]
    public async Task What_cannot_be_brought_back_is_removed_by_a_second_press()
    {
        var (student, batch) = await SceneAsync("Runa");
        await RecordingParcel.KeepAsync(host, batch.Reeds[0].Id, RecordingKind.ArrivalSound, default, isFromStudio: false);

        var (_, page, _) = await student.See($"/batches/{batch.Code}");

        var remove = page.IndexOf("/remove\"", StringComparison.Ordinal);
        var fold = page.LastIndexOf("<details", remove, StringComparison.Ordinal);
        Assert.StartsWith("<details class=\"remove\">", page[fold..], StringComparison.Ordinal);
        Assert.DoesNotContain("</details>", page[fold..remove], StringComparison.Ordinal);
    }

    [Fact]
    public async Task Without_a_script_a_small_file_goes_whole_and_what_was_typed_survives_a_refusal()
    {
        var (student, batch) = await SceneAsync("Lena");
        var path = $"/recordings/add/{batch.Reeds[0].Id.Value}/ArrivalPhoto";

        var (status, page, _) = await (await PostFileAsync(student, path, MediaCorpus.Zip(), "it opens too far")).Read();
        Assert.Equal(HttpStatusCode.OK, status);
        Assert.Contains("This isn’t a photograph that can be kept.", WebUtility.HtmlDecode(page), StringComparison.Ordinal);
        Assert.Contains("it opens too far</textarea>", page, StringComparison.Ordinal);

        using var sent = await PostFileAsync(student, path, PictureFiles.Jpeg(before: PictureFiles.Exif(6)), "it opens too far");
        Assert.StartsWith($"/batches/{batch.Code}?kept=", sent.Leads(), StringComparison.Ordinal);
        var (_, shown, _) = await student.See(sent.Leads()!);
        Assert.Contains("This is kept.", shown, StringComparison.Ordinal);
        Assert.Contains("alt=\"it opens too far\"", shown, StringComparison.Ordinal);
        Assert.Contains("loading=\"lazy\"", shown, StringComparison.Ordinal);
    }

    [Fact]
    public async Task The_teacher_finds_them_on_the_arrival_page_and_at_the_bench()
    {
        var (_, batch) = await SceneAsync("Nele");
        var kept = await RecordingParcel.KeepAsync(host, batch.Reeds[0].Id, RecordingKind.ArrivalSound, default, isFromStudio: false);
        var teacher = await host.Teacher();
        foreach (var path in new[] { $"/batches/{batch.Code}/arrival", $"/bench/{batch.Reeds[0].Id.Value}" })
        {
            var (_, page, _) = await teacher.See(path);

            Assert.Contains($"<audio controls preload=\"none\" src=\"/recordings/{kept.Id.Value}\"", page, StringComparison.Ordinal);
            Assert.Contains("data-recording=\"ArrivalSound\"", page, StringComparison.Ordinal);
        }
    }

    [Fact]
    public async Task The_letter_plays_how_it_came_beside_how_it_goes_home_where_there_are_both()
    {
        var (student, batch) = await SceneAsync("Pia");
        await RecordingParcel.KeepAsync(host, batch.Reeds[0].Id, RecordingKind.ArrivalSound, default, isFromStudio: false);
        await host.SendLetter(batch.Code);
        var (status, alone, _) = await student.See($"/letters/{batch.Code}");
        Assert.Equal(HttpStatusCode.OK, status);
        Assert.DoesNotContain("<audio", alone, StringComparison.Ordinal);

        var other = (await host.Announce("Pia", "red thread")).Batch;
        var came = await RecordingParcel.KeepAsync(host, other.Reeds[0].Id, RecordingKind.ArrivalSound, default, isFromStudio: false);
        var home = await RecordingParcel.KeepAsync(host, other.Reeds[0].Id, RecordingKind.FinalSound, default, isFromStudio: true);
        await host.SendLetter(other.Code);
        var (_, page, _) = await student.See($"/letters/{other.Code}");

        Assert.Contains("At home, before the post", page, StringComparison.Ordinal);
        Assert.True(page.IndexOf(came.Id.Value.ToString(), StringComparison.Ordinal) < page.IndexOf(home.Id.Value.ToString(), StringComparison.Ordinal));
        Assert.Contains($"src=\"/recordings/{home.Id.Value}\"", page, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Whoever_reads_of_a_sound_reads_who_made_it_and_that_it_was_made_before_the_post()
    {
        var student = await host.YoungerAsync("Asta Vale");
        var (guardian, ward) = await host.AgreedAsync(student, ClinicHost.NewEmail("rosa"));
        var batch = (await host.Announce("Asta Vale", "green thread")).Batch;
        AccountId theirs;
        await using (var scope = host.Services.CreateAsyncScope())
        {
            var answers = await scope.ServiceProvider.GetRequiredService<ClinicDb>().Set<Guardianship>().SingleAsync(row => row.Student == batch.Student, Ct);
            theirs = answers.Account!.Value;
        }

        await RecordingParcel.KeepAsync(host, batch.Reeds[0].Id, RecordingKind.ArrivalSound, default, isFromStudio: false);
        await RecordingParcel.KeepAsync(host, batch.Reeds[0].Id, RecordingKind.ArrivalPhoto, theirs, isFromStudio: false);
        await RecordingParcel.KeepAsync(host, batch.Reeds[0].Id, RecordingKind.ArrivalPhoto, default, isFromStudio: true);
        var path = $"/batches/{batch.Code}";

        var (own, guards, works) = (await student.TextAsync(path), await guardian.TextAsync(path), await (await host.Teacher()).TextAsync(path));

        Assert.Equal(["How it plays before you post it|by you", "How it looks before you post it|by a parent or guardian", "How it looks as it came|by the studio"], Made(own));
        Assert.Equal(["How it played at home, before the post|by the student", "How it looked at home, before the post|by you", "How it looks as it came|by the studio"], Made(guards));
        Assert.Equal(["How it played at home, before the post|by the student", "How it looked at home, before the post|by a parent or guardian", "How it looks as it came|by the studio"], Made(works));
        Assert.StartsWith("/wards/", ward, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Whoever_records_reads_what_a_peep_is()
    {
        var (student, batch) = await SceneAsync("Elin");

        Assert.Contains("for a peep they hold the tip as when you play", (await student.See($"/recordings/add/{batch.Reeds[0].Id.Value}/ArrivalSound")).Page, StringComparison.Ordinal);
    }

    private static List<string> Made(string page)
    {
        using var document = new HtmlParser().ParseDocument(page);
        return [.. document.QuerySelectorAll(".recordings > ul > li").Select(item => $"{item.QuerySelector("figcaption")!.TextContent}|{item.QuerySelector("p.hint")!.TextContent.Split(", ")[^1].Trim()}")];
    }

    private async Task<(HttpClient Student, Batch Batch)> SceneAsync(string name)
    {
        var student = await host.Student(name);
        return (student, (await host.Announce(name, "green thread")).Batch);
    }

    private static Task<Form> FormAsync(HttpClient client, Batch batch) => Form.At(client, $"/recordings/add/{batch.Reeds[0].Id.Value}/ArrivalSound", $"/recordings/add/{batch.Reeds[0].Id.Value}/ArrivalSound");

    private static async Task<Guid> StartAsync(Form form, Batch batch, int bytes)
    {
        using var begun = await form.Set("Reed", batch.Reeds[0].Id.Value.ToString()).Set("Kind", "ArrivalSound")
            .Set("Bytes", bytes.ToString(System.Globalization.CultureInfo.InvariantCulture)).PostTo("/recordings");
        return (await ReadAsync(begun)).GetProperty("id").GetGuid();
    }

    private static Task<HttpResponseMessage> FinishAsync(Form form, Guid id, byte[] sent) =>
        form.Set("Sha256", Convert.ToHexStringLower(SHA256.HashData(sent))).PostTo($"/recordings/{id}/done");

    private static async Task<JsonElement> ReadAsync(HttpResponseMessage answer) => JsonDocument.Parse(await answer.Content.ReadAsStringAsync(Ct)).RootElement;

    private static async Task BreakOffAsync(HttpClient client, Form form, string path, byte[] piece, int after)
    {
        using var cut = CancellationTokenSource.CreateLinkedTokenSource(Ct);
        using var request = new HttpRequestMessage(HttpMethod.Put, new Uri(path, UriKind.Relative)) { Content = new BrokenContent(piece, after, cut) };
        request.Headers.Add("RequestVerificationToken", form[Token]);
        await Assert.ThrowsAnyAsync<OperationCanceledException>(() => client.SendAsync(request, cut.Token));
    }

    private static async Task<HttpResponseMessage> PostFileAsync(HttpClient client, string path, byte[] bytes, string words)
    {
        var form = await Form.At(client, path, path);
        using var content = new MultipartFormDataContent
        {
            { new StringContent(form[Token]!), Token },
            { new StringContent("recording"), "_handler" },
            { new StringContent(Parcel.NewOperation().Value.ToString()), "Operation" },
            { new StringContent($"/batches/{await CodeOfAsync(client)}"), "Back" },
            { new StringContent(words), "Words" },
            { new ByteArrayContent(bytes), "File", "C:\\harmless.jpg.html" },
        };
        return await client.PostAsync(new Uri(path, UriKind.Relative), content, Ct);
    }

    // The newest batch of whoever asks, as their home page leads to it.
    private static async Task<string> CodeOfAsync(HttpClient client) =>
        System.Text.RegularExpressions.Regex.Match((await client.See("/")).Page, "/batches/([A-Z0-9-]+)").Groups[1].Value;

    private sealed class BrokenContent(byte[] bytes, int after, CancellationTokenSource cut) : HttpContent
    {
        protected override async Task SerializeToStreamAsync(Stream stream, TransportContext? context)
        {
            await stream.WriteAsync(bytes.AsMemory(0, after), Ct);
            await stream.FlushAsync(Ct);
            await cut.CancelAsync();
            cut.Token.ThrowIfCancellationRequested();
        }

        protected override bool TryComputeLength(out long length)
        {
            length = bytes.Length;
            return true;
        }
    }
}

/// <summary>An account begins only so many in an hour: OWASP ASVS 5.0, 2.4.1.</summary>
public sealed class UploadLimitTests(UploadLimitTests.Limited host) : IClassFixture<UploadLimitTests.Limited>
{
    [Fact]
    public async Task After_the_limit_another_is_turned_away_for_a_while_and_others_aren_t()
    {
        Assert.Equal([404, 404, 404, 429], await KnockAsync(await host.Student("Ines"), 4));
        Assert.Equal([404], await KnockAsync(await host.Student("Tove"), 1));
        Assert.Equal([404, 404, 404, 429], await KnockAsync(await host.Student("Yves"), 4, "/recordings/"));
    }

    private static async Task<List<int>> KnockAsync(HttpClient client, int times, string path = "/recordings")
    {
        var got = new List<int>();
        for (var time = 0; time < times; time++)
        {
            using var answer = await (await Form.At(client, "/trouble", "/lamp")).Set("Reed", Guid.Empty.ToString()).Set("Kind", "ArrivalSound").Set("Bytes", "9").PostTo(path);
            got.Add((int)answer.StatusCode);
        }

        return got;
    }

    public sealed class Limited : ClinicHost
    {
        protected override void ConfigureWebHost(IWebHostBuilder builder)
        {
            base.ConfigureWebHost(builder);
            builder.UseSetting(RateLimits.Uploads, "3");
        }
    }
}

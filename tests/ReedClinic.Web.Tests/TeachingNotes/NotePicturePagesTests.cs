using System.IO.Compression;
using System.Net;
using AngleSharp.Html.Dom;
using AngleSharp.Html.Parser;
using Microsoft.Extensions.DependencyInjection;
using ReedClinic.Data.Letters;
using ReedClinic.Domain.Intake;
using ReedClinic.Domain.Outcomes;
using ReedClinic.Domain.People;
using ReedClinic.Web.Tests.Hosting;
using ReedClinic.Web.Tests.Letters;

namespace ReedClinic.Web.Tests.TeachingNotes;

public sealed class NotePicturePagesTests(ClinicHost host) : IClassFixture<ClinicHost>
{
    private static readonly string[] Hidden = ["__RequestVerificationToken", "_handler", "Form.Operation", "Form.Version"];

    private static CancellationToken Ct => TestContext.Current.CancellationToken;

    [Fact]
    public async Task A_picture_goes_from_a_note_into_a_letter_and_only_its_readers_have_it()
    {
        using var student = await host.Student();
        using var other = await host.Student();
        using var teacher = await host.Teacher();
        using var visitor = host.Visitor();
        using var kept = await PostAsync(teacher, PictureFiles.Jpeg(before: PictureFiles.Exif(1)), ("Form.Title", "With a picture"), ("Form.Text", "See this."), ("Form.PictureWords", "Thick \"corners\""), ("Form.Step", "keep"));
        Assert.Equal("/notes?done=kept", kept.Leads());
        var code = await BatchWorkedOn.Of(host, student);
        var path = $"/batches/{code}/letter";
        var id = (await See(teacher, path)).QuerySelectorAll(".letter-note").Single(note => note.QuerySelector("summary")!.TextContent == "With a picture").QuerySelector("button")!.GetAttribute("value")!;
        using var put = await (await Form.At(teacher, path)).Set("NotePut", id).Set("NotePart", "lesson").Post();
        Assert.Equal($"{path}?done=saved", put.Leads());
        var image = (await See(teacher, path)).QuerySelector(".letter-lesson figure img")!;
        var address = image.GetAttribute("src")!;
        Assert.Equal(("Thick \"corners\"", $"/letters/{code}/pictures/"), (image.GetAttribute("alt"), address[..(address.LastIndexOf('/') + 1)]));
        Assert.Equal((HttpStatusCode.OK, HttpStatusCode.NotFound), (await StatusAsync(teacher, address), await StatusAsync(student, address)));

        using var filled = await (await Form.At(teacher, path)).Set("Verdict.verdict-two", "NeedsPlayingIn").Set("Step", "mend").Post();
        using var sent = await (await Form.At(teacher, path)).Set("Step", "send").Set("ReadThrough", "yes").Post();
        Assert.Equal($"{path}?done=sent", sent.Leads());

        Assert.Equal(address, (await See(student, $"/letters/{code}")).QuerySelector(".letter-lesson figure img")!.GetAttribute("src"));
        using var answer = await student.GetAsync(new Uri(address, UriKind.Relative), Ct);
        Assert.Equal((HttpStatusCode.OK, "image/jpeg"), (answer.StatusCode, answer.Content.Headers.ContentType?.MediaType));
        Assert.StartsWith("sandbox", answer.Headers.GetValues("Content-Security-Policy").Single(), StringComparison.Ordinal);
        Assert.Equal(-1, (await answer.Content.ReadAsByteArrayAsync(Ct)).AsSpan().IndexOf("Hidden"u8));
        Assert.Equal((HttpStatusCode.NotFound, HttpStatusCode.NotFound), (await StatusAsync(other, address), await StatusAsync(student, address[..^1] + "0")));
        Assert.NotEqual(HttpStatusCode.OK, await StatusAsync(visitor, address));
        Assert.NotEqual(HttpStatusCode.OK, await StatusAsync(student, $"/notes/pictures/{address.Split('/')[^1]}"));
        var pdf = await student.GetByteArrayAsync(new Uri($"/letters/{code}/file?paper=a4", UriKind.Relative), Ct);
        Assert.NotEqual(-1, pdf.AsSpan().IndexOf("/DCTDecode"u8));
        await SeenInTheCopyAsync(student, code, address.Split('/')[^1]);
        await SeenByLinkAsync(visitor, code, address.Split('/')[^1]);
    }

    [Fact]
    public async Task A_picture_without_words_is_kept_in_sight_until_they_are_there()
    {
        using var teacher = await host.Teacher();

        using var refused = await PostAsync(teacher, PictureFiles.Png(), ("Form.Title", ""), ("Form.Text", "Typed."), ("Form.Step", "keep"));

        var (_, page, _) = await refused.Read();
        var document = new HtmlParser().ParseDocument(page);
        Assert.NotNull(document.GetElementById("f-Form-Title-error"));
        Assert.Contains("what the picture shows", document.GetElementById("f-Form-PictureWords-error")!.TextContent, StringComparison.Ordinal);
        var key = document.QuerySelector("input[name='Form.Picture']")!.GetAttribute("value")!;
        Assert.Equal($"/notes/pictures/{key}", document.QuerySelector(".note-picture img")!.GetAttribute("src"));
        Assert.Equal(HttpStatusCode.OK, await StatusAsync(teacher, $"/notes/pictures/{key}"));
        var title = $"Note {Parcel.NewOperation().Value:N}";
        using var kept = await Form.Of(teacher, "/notes/new", page).Set("Form.Title", title).Set("Form.PictureWords", "A reed.").Set("Form.Step", "keep").Post();
        Assert.Equal("/notes?done=kept", kept.Leads());

        var address = (await See(teacher, "/notes")).QuerySelectorAll("a").Single(link => link.TextContent == title).GetAttribute("href")!;
        Assert.Equal((key, "A reed."), Picture(await See(teacher, address)));
        using var without = await (await Form.At(teacher, address)).Set("Form.WithoutPicture", "yes").Set("Form.Step", "keep").Post();
        Assert.Equal("", Picture(await See(teacher, address)).Key);
    }

    [Fact]
    public async Task What_is_no_picture_is_refused_beside_its_field_and_what_was_typed_stays()
    {
        using var teacher = await host.Teacher();
        foreach (var (file, why) in new (byte[] File, string Why)[]
        {
            ("<svg xmlns='http://www.w3.org/2000/svg' onload='alert(1)'/>"u8.ToArray(), "PNG and JPEG can"),
            (PictureFiles.WebP(), "PNG and JPEG can"),
            (new byte[6_000_001], "too large"),
        })
        {
            using var refused = await PostAsync(teacher, file, ("Form.Title", "Typed title"), ("Form.Text", "Typed."), ("Form.PictureWords", "Typed words"), ("Form.Step", "keep"));

            var page = new HtmlParser().ParseDocument((await refused.Read()).Page);
            Assert.Contains(why, page.GetElementById("f-Form-Picture-error")!.TextContent, StringComparison.Ordinal);
            Assert.Equal(("Typed title", "Typed.", "Typed words"), (page.GetElementById("f-Form-Title")!.GetAttribute("value"), page.GetElementById("f-Form-Text")!.TextContent.Trim(), page.GetElementById("f-Form-PictureWords")!.GetAttribute("value")));
        }
    }

    [Fact]
    public async Task A_picture_that_there_isnt_is_said_beside_the_words_and_the_letter_stays()
    {
        using var student = await host.Student();
        using var teacher = await host.Teacher();
        var path = $"/batches/{await BatchWorkedOn.Of(host, student)}/letter";
        using var saved = await (await Form.At(teacher, path)).Set("Block.lesson", "[picture nobodyknows2: A reed.]").Set("Verdict.verdict-two", "NeedsPlayingIn").Set("Step", "mend").Post();

        var page = await See(teacher, path);
        Assert.Contains("a picture isn’t known", page.GetElementById("f-Block-lesson-error")!.TextContent, StringComparison.Ordinal);
        Assert.True(page.GetElementById("f-Block-lesson")!.Closest("details")!.HasAttribute("open"));
        Assert.NotNull(page.QuerySelector("#gaps a[href$='#f-Block-lesson']"));
        Assert.Null(page.QuerySelector("#gaps input[name='Reason.picture-lesson']"));
        using var sent = await (await Form.At(teacher, path)).Set("Step", "send").Set("ReadThrough", "yes").Post();
        Assert.Null(sent.Leads());
    }

    private static async Task SeenInTheCopyAsync(HttpClient student, string code, string key)
    {
        using var copy = await (await Form.At(student, "/privacy/export")).Post();
        using var zip = new ZipArchive(await copy.Content.ReadAsStreamAsync(Ct));
        Assert.NotNull(zip.GetEntry($"letters/pictures/picture-{key}.jpg"));
        using var html = new StreamReader(zip.GetEntry($"letters/{code}.html")!.Open());
        Assert.Contains($"<img src=\"pictures/picture-{key}.jpg\" alt=\"Thick &quot;corners&quot;\"", await html.ReadToEndAsync(Ct), StringComparison.Ordinal);
    }

    private async Task SeenByLinkAsync(HttpClient visitor, string code, string key)
    {
        var teacher = new Actor(new AccountId(Parcel.NewOperation().Value), null, IsTeacher: true, IsOwner: false);
        await using var scope = host.Services.CreateAsyncScope();
        var known = Assert.IsType<Outcome<BatchCode>.Done>(BatchCode.Read(code)).Value;
        var made = await scope.ServiceProvider.GetRequiredService<LetterLinkBook>().MakeAsync(teacher, known, 7, Parcel.NewOperation(), Ct);
        var page = $"/read/{Assert.IsType<Outcome<MadeLetterLink>.Done>(made).Value.Secret}";

        Assert.Equal($"{page}/pictures/{key}", (await See(visitor, page)).QuerySelector(".letter-lesson figure img")!.GetAttribute("src"));
        Assert.Equal((HttpStatusCode.OK, HttpStatusCode.NotFound), (await StatusAsync(visitor, $"{page}/pictures/{key}"), await StatusAsync(visitor, $"{page}/pictures/nobodyknows2")));
        Assert.Equal(HttpStatusCode.NotFound, await StatusAsync(visitor, $"{page}x/pictures/{key}"));
        Assert.NotEqual(-1, (await visitor.GetByteArrayAsync(new Uri($"{page}/file", UriKind.Relative), Ct)).AsSpan().IndexOf("/DCTDecode"u8));
    }

    private static (string? Key, string? Words) Picture(IHtmlDocument page) =>
        (page.QuerySelector("input[name='Form.Picture']")!.GetAttribute("value") ?? "", page.GetElementById("f-Form-PictureWords")!.GetAttribute("value"));

    private static async Task<HttpStatusCode> StatusAsync(HttpClient client, string path)
    {
        using var answer = await client.GetAsync(new Uri(path, UriKind.Relative), Ct);
        return answer.StatusCode;
    }

    private static async Task<HttpResponseMessage> PostAsync(HttpClient client, byte[] file, params (string Name, string Value)[] fields)
    {
        var form = await Form.At(client, "/notes/new");
        using var content = new MultipartFormDataContent();
        foreach (var (name, value) in fields.Concat(Hidden.Select(name => (name, form[name] ?? ""))))
        {
            content.Add(new StringContent(value), name);
        }

        content.Add(new ByteArrayContent(file), "File", "C:\\harmless.png.html");
        return await client.PostAsync(new Uri("/notes/new", UriKind.Relative), content, Ct);
    }

    private static async Task<IHtmlDocument> See(HttpClient visitor, string path)
    {
        var (status, page, _) = await visitor.See(path);
        Assert.Equal(HttpStatusCode.OK, status);
        return new HtmlParser().ParseDocument(page);
    }
}

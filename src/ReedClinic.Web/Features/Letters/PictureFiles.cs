using ReedClinic.Data.TeachingNotes;

namespace ReedClinic.Web.Features.Letters;

/// <summary>Reads the pictures of a letter that is to be printed.</summary>
internal static class PictureFiles
{
    /// <summary>Their bytes by their keys; one whose file isn't there is left out, and told in words.</summary>
    /// <param name="pictures">The pictures.</param>
    public static IReadOnlyDictionary<string, ReadOnlyMemory<byte>> Read(IReadOnlyList<NotePictureFile> pictures) =>
        pictures.Where(picture => File.Exists(picture.Path)).ToDictionary(picture => picture.Key, picture => new ReadOnlyMemory<byte>(File.ReadAllBytes(picture.Path)));
}

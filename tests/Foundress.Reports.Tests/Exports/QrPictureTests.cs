using System.Globalization;
using System.Xml.Linq;
using CsCheck;
using Foundress.Reports.Labels;
using ZXing;
using ZXing.Common;
using ZXing.QrCode;

namespace Foundress.Reports.Tests.Exports;

public sealed class QrPictureTests
{
    // Read back by ZXing, another library than the one the codes are made with.
    [Fact]
    public void Draw_AnyAddress_AnotherLibraryReadsIt() =>
        Gen.Select(Gen.Guid, Gen.Int[0, 60]).Sample(
            (id, more) =>
            {
                var address = $"https://bees{new string('x', more)}.example/colony/{id}";
                Assert.Equal(address, Decode(QrPicture.Draw(address)));
            },
            iter: 200);

    [Theory]
    [InlineData("")]
    [InlineData(null)]
    public void Draw_NoText_IsRefused(string? text) => Assert.Throws<ArgumentException>(() => QrPicture.Draw(text!));

    [Fact]
    public void Draw_TooLong_IsRefusedWithItsLength() =>
        Assert.Contains("301", Assert.Throws<ArgumentException>(() => QrPicture.Draw(new string('a', 301))).Message, StringComparison.Ordinal);

    [Theory]
    [InlineData("https://bees.example", "https://bees.example/")]
    [InlineData(" https://bees.example/club/ ", "https://bees.example/club/")]
    [InlineData("https://bees.example/a?x=1#y", "https://bees.example/a/")]
    [InlineData("bees.example", null)]
    [InlineData("ftp://bees.example", null)]
    [InlineData("", null)]
    public void Address_AsTyped_IsTheAppsOrNone(string typed, string? address) => Assert.Equal(address, LabelSheet.Address(typed)?.AbsoluteUri);

    [Fact]
    public void Page_NamesWithMarkup_AreEscaped() =>
        Assert.Contains("&lt;b&gt;", LabelSheet.Page([new("Hill", "<b>", "https://bees.example/colony/1")]), StringComparison.Ordinal);

    private static string? Decode(string svg)
    {
        const int scale = 4;
        var root = XElement.Parse(svg);
        var size = int.Parse(root.Attribute("viewBox")!.Value.Split(' ')[2], CultureInfo.InvariantCulture);
        var dark = new bool[size, size];
        var path = root.Elements().Single(element => element.Name.LocalName == "path").Attribute("d")!.Value;
        foreach (var run in path.Split('M', StringSplitOptions.RemoveEmptyEntries))
        {
            var numbers = run[..run.IndexOf('v', StringComparison.Ordinal)].Split([' ', 'h']).Select(text => int.Parse(text, CultureInfo.InvariantCulture)).ToArray();
            for (var x = numbers[0]; x < numbers[0] + numbers[2]; x++)
                dark[numbers[1], x] = true;
        }

        var pixels = new byte[size * size * scale * scale];
        for (var y = 0; y < size * scale; y++)
        {
            for (var x = 0; x < size * scale; x++)
                pixels[(y * size * scale) + x] = dark[y / scale, x / scale] ? (byte)0 : (byte)255;
        }

        var source = new RGBLuminanceSource(pixels, size * scale, size * scale, RGBLuminanceSource.BitmapFormat.Gray8);
        // A picture drawn by a program has no noise to look through: the reader is told so, else its search for corners now and then misses one.
        return new QRCodeReader().decode(new BinaryBitmap(new GlobalHistogramBinarizer(source)), new Dictionary<DecodeHintType, object> { [DecodeHintType.PURE_BARCODE] = true })?.Text;
    }
}
